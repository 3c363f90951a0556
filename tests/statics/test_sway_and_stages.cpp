// Sideways loads on parallel-sided slices, and domes while they are built.
#include "geometry/plan/section.hpp"
#include "geometry/statics/corbel.hpp"
#include "geometry/statics/stages.hpp"
#include "geometry/statics/sway.hpp"
#include "geometry/statics/tunnel_slice.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

struct StoreCase {
    Design design = store_design();
    BuildingForm building = make_building_form(design);
    const DomeForm& dome = building.domes[0];
    std::vector<WallCourse> rings = dome_courses(design, building, dome);
    std::vector<WallCourse> slice = parallel_courses(design, dome);
};

/// A catenary, all lengths by k: a slice of it stands even without its rings.
Design arch_like_store(double k) {
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    design.domes[0].profile.kind = ProfileKind::catenary;
    design.domes[0].profile.rise = 80 * inch;
    for (double* length :
         {&design.course.height, &design.tubes[0].lay_flat, &*design.tubes[0].tamped_width,
          &design.domes[0].inside_diameter, &design.domes[0].springline,
          &*design.domes[0].profile.rise, &design.ground.level})
        *length *= k;
    return design;
}

/// Two plumb walls, `height` high and w thick, under a lid that rests on both: no thrust at all.
std::vector<WallCourse> portal(double w, double height, int count) {
    std::vector<WallCourse> courses;
    for (int i = 0; i <= count; ++i) {
        WallCourse course;
        course.number = i + 1;
        course.cap = i == count;
        course.bottom = i * height / count;
        course.top = course.bottom + (course.cap ? 1e-4 : height / count);
        course.inside = course.cap ? 0 : 1;
        course.outside = 1 + w;
        course.contact_inner = 1;
        course.contact_outer = 1 + w;
        course.weight = course.cap ? 1e-6 : 1;
        course.mass_radius = (course.inside + course.outside) / 2;
        courses.push_back(course);
    }
    return courses;
}

} // namespace

TEST_CASE("parallel slice: the faces of the dome, the weights of a metre of wall") {
    const StoreCase store;
    REQUIRE(store.slice.size() == store.rings.size());
    for (std::size_t i = 0; i < store.slice.size(); ++i) {
        CHECK(store.slice[i].inside == store.rings[i].inside);
        CHECK(store.slice[i].outside == store.rings[i].outside);
        CHECK(store.slice[i].contact_width() == Approx(store.rings[i].contact_width()));
        if (!store.slice[i].cap)
            CHECK(store.slice[i].weight ==
                  Approx(1762 * 9.80665 * stadium_area(15 * inch, 5 * inch)).epsilon(1e-9));
    }
    CHECK(crown_block_from(store.dome) == 28);
    const Slice slice = sway_slice(store.slice, 28);
    CHECK(slice.blocks.size() == 27 + 1 + 27);
    CHECK(slice.joints.size() == 56);
    const Slice rough = sway_slice(store.slice, 28, {0.5, 0.4});
    CHECK(rough.joints.front().friction == 0.4);
    CHECK(rough.joints.back().friction == 0.4);
    CHECK(rough.joints[1].friction == 0.5);
    CHECK(rough.joints[54].friction == 0.5);
    // Left and right are alike.
    for (std::size_t i = 0; i < 28; ++i) {
        CHECK(slice.blocks[i].centre.x() == Approx(-slice.blocks[54 - i].centre.x()).margin(1e-12));
        CHECK(slice.joints[i].outer.x() == Approx(-slice.joints[55 - i].outer.x()));
    }
}

TEST_CASE("two walls under a light lid bear w/h of their weight, or slide before") {
    // Four hinges, a parallelogram: each wall tips about its leeward edge (any statics text).
    const std::vector<WallCourse> courses = portal(0.4, 2, 8);
    CHECK(sway_capacity(sway_slice(courses, 9)) == Approx(0.4 / 2).epsilon(1e-4));
    CHECK(sway_capacity(sway_slice(courses, 9, {0.1, 0.1})) == Approx(0.1).epsilon(1e-4));
    // Wind on the left wall's 2 m, resisted by both: p h2/2 = 2 W w/2, W = 8.
    CHECK(wind_capacity(courses, 9, {}) == Approx(2 * 8 * 0.2 / (2.0 * 2.0 / 2)).epsilon(1e-3));
    // Sheltered up to 1.1 m, in the midst of a course: p (0.9 m) acts 1.55 m up.
    SwaySlice sheltered;
    sheltered.wind_from = 1.1;
    CHECK(wind_capacity(courses, 9, sheltered) == Approx(2 * 8 * 0.2 / (0.9 * 1.55)).epsilon(1e-3));
    CHECK(free_wall_capacity(0.25, 2, 0.5) == Approx(0.125));
    CHECK(free_wall_capacity(0.25, 2, 0.1) == Approx(0.1));
}

TEST_CASE("sideways capacity: the same at any size, never more with less friction") {
    const auto capacity = [](const Design& design, const SwaySlice& what) {
        const DomeForm dome = make_dome_form(design, design.domes[0]);
        return sway_capacity(
            sway_slice(parallel_courses(design, dome), crown_block_from(dome), what));
    };
    const Design one_size = arch_like_store(1);
    const double one = capacity(one_size, {});
    CHECK(one > 0.02);
    CHECK(capacity(arch_like_store(2), {}) == Approx(one).epsilon(1e-5));
    double before = one;
    for (const double friction : {1e3, 3.0, 1.7, 1.0, 0.5, 0.0}) {
        CAPTURE(friction);
        const double now = capacity(one_size, {friction, friction});
        CHECK(now <= before + 1e-7);
        before = now;
    }
    CHECK(before == 0);
    CHECK(capacity(one_size, {1e3, 1e3}) == Approx(one).epsilon(1e-3));
}

TEST_CASE("wind as a load and wind as a capacity agree") {
    const Design design = arch_like_store(1);
    const DomeForm dome = make_dome_form(design, design.domes[0]);
    const std::vector<WallCourse> courses = parallel_courses(design, dome);
    const int from = crown_block_from(dome);
    SwaySlice what;
    what.wind_from = 0;
    const double capacity = wind_capacity(courses, from, what);
    REQUIRE(capacity > 0);
    const auto stands = [&](double pressure) {
        what.wind = pressure;
        return least_thrust(sway_slice(courses, from, what), 0).stands;
    };
    CHECK(stands(capacity * 0.999));
    CHECK_FALSE(stands(capacity * 1.001));
}

TEST_CASE("stages: the wall stands at every course, by its rings once it leans") {
    const StoreCase store;
    std::vector<BuildingStage> stages;
    for (const WallCourse& course : store.rings)
        stages.push_back(building_stage(store.rings, {}, course.number));
    REQUIRE(stages.size() == store.rings.size());
    for (const BuildingStage& stage : stages) {
        CAPTURE(stage.last);
        CHECK(stage.stands);
    }
    CHECK(stages[5].share < 0.2); // plumb yet: only the ring's own centre lies off the middle
    DomeSlice all;
    CHECK(stages.back().share == Approx(centred_thrust(dome_slice(store.rings, all)).share));
    // The last course before its ring is closed is a cantilever on the flat below.
    const std::vector<double> levers = levers_while_building(store.rings);
    for (std::size_t i = 0; i < levers.size(); ++i)
        CHECK(stages[i].open_lever >= levers[i] - 1e-12);
    CHECK(stages[26].open_lever < 0.05);
    // Rings that a window keeps open up to the top do not help: a dome that leans falls in.
    std::vector<WallCourse> open = store.rings;
    for (WallCourse& course : open)
        if (course.gaps.empty())
            course.gaps = {RingGap{"slot", 0, 0.1, 0, 0}};
    bool falls = false;
    for (const WallCourse& course : open)
        falls = falls || !building_stage(open, {}, course.number).stands;
    CHECK(falls);
}
