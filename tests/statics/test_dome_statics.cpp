// The whole statics of the demo designs.
#include "geometry/plan/plan_building.hpp"
#include "geometry/statics/dome_statics.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("demo domes: every strip has a line, those beside openings are no better") {
    for (const char* demo :
         {"grain-store.toml", "washroom.toml", "workshop.toml", "cabin-metric.toml"}) {
        CAPTURE(demo);
        const BuildingPlan plan = demo_plan(demo);
        REQUIRE(plan.sound());
        const BuildingForm& building = plan.schedule.building;
        for (const DomeForm& dome : building.domes) {
            const DomeStatics statics = dome_statics(plan.design, building, dome);
            REQUIRE_FALSE(statics.without_contact);
            REQUIRE(statics.strips.size() == gap_ids(statics.courses).size() + 1);
            CHECK(statics.strips[0].beside.empty());
            CHECK(statics.worst > 0);
            const double worst = statics.strips[statics.worst].centred.share;
            for (const StripStatics& strip : statics.strips) {
                CAPTURE(strip.beside);
                REQUIRE(strip.centred.line.stands);
                CHECK(strip.centred.share >= statics.strips[0].centred.share - 1e-9);
                CHECK(strip.centred.share <= worst);
                CHECK(strip.centred.share < 1);
                REQUIRE(strip.friction.line.stands);
                CHECK(strip.joints.front().course == 1);
                // With the design's friction there is a line just where the least that is needed is
                // had.
                const bool enough = strip.friction.friction <= plan.design.ground.friction;
                if (enough)
                    CHECK(strip.least.stands);
                if (!strip.least.stands)
                    continue;
                // The thrust on the ground is within its friction, and the centred line's is in
                // between the extremes where it keeps within that.
                const double ground =
                    strip.greatest.joints.back().normal * plan.design.ground.friction;
                CHECK(strip.greatest.joints.back().thrust() <= ground * (1 + 1e-6));
                CHECK(strip.least.joints.back().thrust() <=
                      strip.greatest.joints.back().thrust() * (1 + 1e-9));
                // Pressures: at least the weight over the whole flat.
                for (const JointCheck& joint : strip.joints)
                    CHECK(joint.pressure >=
                          joint.normal /
                              statics.courses[static_cast<std::size_t>(joint.course - 1)]
                                  .contact_width() *
                              (1 - 1e-9));
            }
            CHECK_FALSE(statics.piers.empty());
            const ThrustLine springing = springline_thrust(statics.courses, dome);
            REQUIRE(springing.stands);
            CHECK(springing.joints.back().thrust() > 0);
            // The stem must take it down: the least on the ground cannot be less, for no ring
            // pulls.
            CHECK(springing.joints.back().thrust() <=
                  statics.strips[0].least.joints.back().thrust() * (1 + 1e-6));
        }
    }
}

TEST_CASE("the figures of docs/concepts/statics.md are those of the grain store") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const BuildingForm& building = plan.schedule.building;
    const DomeStatics statics = dome_statics(plan.design, building, building.domes[0]);
    CHECK(statics.strips[0].centred.safety() == Approx(1.8).epsilon(0).margin(0.05));
    CHECK(statics.strips[statics.worst].beside == "door");
    CHECK(statics.strips[statics.worst].centred.safety() == Approx(1.4).epsilon(0).margin(0.05));
    CHECK(statics.strips[0].least.joints.back().thrust() == Approx(2.9e3).epsilon(0).margin(50));
    CHECK(statics.strips[0].least.joints.back().normal == Approx(39e3).epsilon(0).margin(500));
}

TEST_CASE("a course that finds nothing to lie on is named, and nothing is reckoned") {
    BuildingPlan plan = demo_plan("grain-store.toml");
    Design design = plan.design;
    design.domes[0].profile.kind = ProfileKind::parabola;
    design.domes[0].profile.rise = 0.762; // 30 in on a half-span of 54
    const BuildingForm building = make_building_form(design);
    const DomeStatics statics = dome_statics(design, building, building.domes[0]);
    REQUIRE(statics.without_contact);
    CHECK(statics.strips.empty());
    CHECK(*statics.without_contact > 3);
}

TEST_CASE("snow adds its weight to the ground and takes nothing off the thrust") {
    BuildingPlan plan = demo_plan("grain-store.toml");
    plan.design.site.snow = 2000;
    const BuildingForm& building = plan.schedule.building;
    const DomeStatics bare = dome_statics(plan.design, building, building.domes[0], {true, false});
    const DomeStatics snowed = dome_statics(plan.design, building, building.domes[0], {true, true});
    const double r = building.domes[0].profile.half_span + building.domes[0].width;
    CHECK(snowed.strips[0].least.joints.back().normal - bare.strips[0].least.joints.back().normal ==
          Approx(2000 * r * r / 2).epsilon(1e-6));
    CHECK(snowed.strips[0].least.joints.back().thrust() >
          bare.strips[0].least.joints.back().thrust());
}

TEST_CASE("tunnels and joined domes break rings as openings do") {
    Design design = coilwright::testing::store_design();
    Tunnel porch;
    porch.id = "porch";
    porch.from = "store";
    porch.bearing = {330};
    porch.width = 0.9;
    porch.springline = 1.1;
    porch.profile.kind = ProfileKind::pointed;
    porch.profile.rise = 0.9;
    porch.reach = 3;
    porch.tube = "main";
    design.tunnels.push_back(porch);
    Dome bath = design.domes[0];
    bath.id = "bath";
    bath.at = {2.1, 0};
    bath.inside_diameter = 1.8;
    bath.profile.rise = 1.8;
    bath.datum.clear();
    design.domes.insert(design.domes.begin(), bath);
    Join join;
    join.id = "both";
    join.first = "store";
    join.second = "bath";
    design.joins.push_back(join); // open plan
    const BuildingForm building = make_building_form(design);
    const DomeForm* store = find_dome(building, "store");
    REQUIRE(store);
    const DomeStatics statics = dome_statics(design, building, *store);
    REQUIRE(statics.strips.size() == 4);
    CHECK(statics.strips[1].beside == "bath");
    CHECK(statics.strips[2].beside == "door");
    CHECK(statics.strips[3].beside == "porch");
    for (const StripStatics& strip : statics.strips) {
        CAPTURE(strip.beside);
        CHECK_FALSE(strip.centred.line.undecided);
        CHECK(strip.centred.line.stands);
        CHECK(strip.centred.share >= statics.strips[0].centred.share - 1e-9);
    }
    // The porch opens the wall from the floor to its crown, 2 m up: courses 4 to 18.
    const auto broken = [&](int course) {
        for (const RingGap& gap : statics.courses[static_cast<std::size_t>(course - 1)].gaps)
            if (gap.by == "porch")
                return true;
        return false;
    };
    CHECK_FALSE(broken(3));
    CHECK(broken(4));
    CHECK(broken(17));
    CHECK_FALSE(broken(20));
    // A wall that stays is not broken.
    design.tunnels[0].wall_stays = true;
    const BuildingForm stays = make_building_form(design);
    CHECK(dome_statics(design, stays, *find_dome(stays, "store")).strips.size() == 3);
    // The dome that the store's wall cuts off has that gap.
    design.joins[0].keep = "store";
    const BuildingForm kept = make_building_form(design);
    const DomeStatics small = dome_statics(design, kept, *find_dome(kept, "bath"));
    REQUIRE(small.strips.size() == 2);
    CHECK(small.strips[1].beside == "store");
    CHECK(dome_statics(design, kept, *find_dome(kept, "store")).strips.size() == 2); // the door's
}
