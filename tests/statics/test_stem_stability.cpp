// Stems that take thrust, by hand, and against the thrust lines of the same wall.
#include "geometry/statics/dome_statics.hpp"
#include "geometry/statics/stem_stability.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

JointThrust thrust_at(double normal, double thrust, double x, double z) {
    JointThrust joint;
    joint.normal = normal;
    joint.force = {-thrust, normal};
    joint.point = {x, z};
    return joint;
}

std::vector<WallCourse> three_courses() {
    std::vector<WallCourse> courses;
    for (int n = 1; n <= 3; ++n) {
        WallCourse course;
        course.number = n;
        course.bottom = (n - 1) * 0.5;
        course.top = n * 0.5;
        course.contact_inner = 1.1;
        course.contact_outer = 1.5;
        course.weight = 15e3;
        course.mass_radius = 1.2;
        courses.push_back(course);
    }
    return courses;
}

} // namespace

TEST_CASE("a stem of two courses by hand") {
    const StemStability stem =
        stem_stability(three_courses(), 3, thrust_at(20e3, 4e3, 1.1, 1), 0.4);
    CHECK(stem.weight == Approx(30e3));
    CHECK(stem.sliding == Approx(0.4 * 50e3 / 4e3));
    CHECK(stem.overturning == Approx((30e3 * 0.3 + 20e3 * 0.4) / (4e3 * 1)));
    CHECK(stem_stability(three_courses(), 3, thrust_at(20e3, 0, 1.1, 1), 0.4).overturning ==
          unlimited);
}

TEST_CASE("a stem overturns where its thrust line leaves the lowest flat") {
    // Scaled up until the moments balance, the resultant on the ground passes through the toe.
    const Design design = store_design();
    const BuildingForm building = make_building_form(design);
    const DomeForm& dome = building.domes[0];
    std::vector<WallCourse> courses = dome_courses(design, building, dome);
    const ThrustLine line = springline_thrust(courses, dome);
    REQUIRE(line.stands);
    const int springing = 8; // the store's springline, 20 in, lies on the joint under course 8
    JointThrust above = line.joints.back();
    CHECK(above.point.y() == Approx(dome.springline));
    const StemStability stem = stem_stability(courses, springing, above, 0.4);
    CHECK(stem.overturning > 1);
    above.force.x() *= stem.overturning;
    CHECK(stem_stability(courses, springing, above, 0.4).overturning == Approx(1).epsilon(1e-9));
    // The same wall as a slice, pushed at its top.
    DomeSlice what;
    what.last = springing - 1;
    Slice slice = dome_slice(courses, what);
    for (SliceBlock& block : slice.blocks)
        block.hoop_limit = 0;
    SliceBlock& top = slice.blocks.front();
    top.centre =
        (top.weight * top.centre + above.normal * above.point) / (top.weight + above.normal);
    top.weight += above.normal;
    top.push_height = above.point.y();
    const auto ground = static_cast<int>(slice.blocks.size());
    // Only the toe counts here, as in the formula: let every other joint reach as far.
    for (SliceJoint& joint : slice.joints)
        joint.outer.x() = std::max(joint.outer.x(), courses[0].contact_outer);
    top.push = above.thrust() * 0.999;
    CHECK(least_thrust(slice, ground).stands);
    top.push = above.thrust() * 1.001;
    CHECK_FALSE(least_thrust(slice, ground).stands);
}
