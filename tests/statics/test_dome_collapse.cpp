// A dome that cannot stand has its proof: a motion that its loads drive and nothing resists. By the
// duality of linear programs there is such a motion or a line of thrust, never both.
#include "geometry/statics/dome_slice.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("each stage of a dome, its rings left out, has a line of thrust or a motion, not both") {
    for (const char* const demo : {"grain-store.toml", "washroom.toml", "workshop.toml"}) {
        const BuildingPlan plan = testing::demo_plan(demo);
        const BuildingForm& building = plan.schedule.building;
        const std::vector<WallCourse> courses =
            dome_courses(plan.design, building, building.domes.front());
        int stands = 0, falls = 0;
        for (int last = 2; last <= building.domes.front().last_ring; ++last) {
            DomeSlice what;
            what.last = last;
            Slice slice = dome_slice(courses, what);
            for (SliceBlock& block : slice.blocks)
                block.hoop_limit = block.tie_limit = 0; // nothing leans on its neighbours
            const CentredThrust centred = centred_share(slice);
            const Mechanism motion = collapse_mechanism(slice);
            CAPTURE(demo, last, centred.share);
            if (centred.line.stands && centred.share < 1 - 1e-6) {
                ++stands;
                CHECK(motion.blocks.empty());
            } else if (!centred.line.stands || centred.share > 1 + 1e-6) {
                ++falls;
                REQUIRE(motion.blocks.size() == slice.blocks.size());
                CHECK(motion.work > 0);
                // It falls in: the topmost course goes down and toward the pole.
                CHECK(motion.blocks.front().shift.y() < 0);
                CHECK(motion.blocks.front().shift.x() < 1e-9);
            }
        }
        CHECK(stands > 3); // the stem and the first that lean
        CHECK(falls > 2);
    }
}

TEST_CASE("the whole dome with its rings stands, and then nothing drives a motion") {
    const BuildingPlan plan = testing::demo_plan("grain-store.toml");
    const BuildingForm& building = plan.schedule.building;
    const Slice slice = dome_slice(dome_courses(plan.design, building, building.domes.front()));
    CHECK(centred_share(slice).share < 1);
    CHECK(collapse_mechanism(slice).blocks.empty());
}

TEST_CASE("friction to nought and without end") {
    const BuildingPlan plan = testing::demo_plan("grain-store.toml");
    const BuildingForm& building = plan.schedule.building;
    const std::vector<WallCourse> courses =
        dome_courses(plan.design, building, building.domes.front());
    DomeSlice free;
    const double needed = friction_needed(dome_slice(courses, free)).friction;
    CHECK(needed > 0.01);
    // With less than the least no state balances; with as much, or a thousand times as much, one
    // does, and the most centred one is then that of no limit.
    const auto stands = [&](double friction) {
        DomeSlice what;
        what.friction = what.ground_friction = friction;
        const Slice slice = dome_slice(courses, what);
        return least_thrust(slice, static_cast<int>(slice.blocks.size())).stands;
    };
    CHECK_FALSE(stands(0));
    CHECK_FALSE(stands(0.98 * needed));
    CHECK(stands(1.02 * needed));
    CHECK(stands(1000 * needed));
    DomeSlice rough;
    rough.friction = rough.ground_friction = 1e4;
    CHECK(centred_share(dome_slice(courses, rough)).share ==
          Approx(centred_share(dome_slice(courses, free)).share).epsilon(1e-6));
}
