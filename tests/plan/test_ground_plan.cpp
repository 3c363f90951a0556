// Floor, footprint and ground course of the whole building, held to closed forms.
#include "geometry/plan/ground_plan.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;
constexpr double r = 54 * inch, w = 15 * inch, R = r + w; // the store

/// What two discs share, their centres d apart (the circular lens, any handbook of mathematics).
double lens(double a, double b, double d) {
    const double at_a = std::acos((d * d + a * a - b * b) / (2 * d * a));
    const double at_b = std::acos((d * d + b * b - a * a) / (2 * d * b));
    return a * a * (at_a - std::sin(at_a) * std::cos(at_a)) +
           b * b * (at_b - std::sin(at_b) * std::cos(at_b));
}

/// The half strip |y| <= a, x >= 0 within a disc about the origin.
double strip_in_disc(double radius, double a) {
    return a * std::sqrt(radius * radius - a * a) + radius * radius * std::asin(a / radius);
}

} // namespace

TEST_CASE("one dome: two discs, and the ring between them in the trench") {
    const GroundPlan ground = lay(store_design()).ground;
    CHECK(ground.floor.area == Approx(pi * r * r).epsilon(1e-12));
    CHECK(ground.footprint.area == Approx(pi * R * R).epsilon(1e-12));
    CHECK(ground.ground_course.area == Approx(pi * (R * R - r * r)).epsilon(1e-12));
    CHECK(outer_perimeter(ground.ground_course) == Approx(2 * pi * R).epsilon(1e-12));
    CHECK(hole_perimeter(ground.ground_course) == Approx(2 * pi * r).epsilon(1e-12));
    CHECK(hole_perimeter(ground.floor) == 0);
    // The door's sill lies on the floor, and its way through the wall is not floor.
}

TEST_CASE("tunnels and buttresses add what lies beyond the dome") {
    const GroundPlan ground = lay(store_with_porch()).ground;
    const double reach = 114 * inch, b = 18 * inch;
    CHECK(ground.floor.area ==
          Approx(pi * r * r + 2 * b * reach - strip_in_disc(r, b)).epsilon(1e-12));
    const double piers = 2 * (30 * inch * (R + 30 * inch) - strip_in_disc(R, 15 * inch));
    const double walls = 2 * (b + w) * reach - strip_in_disc(R, b + w);
    CHECK(ground.footprint.area == Approx(pi * R * R + walls + piers).epsilon(1e-12));
    // Below the floor the dome's ring runs on, the tunnel's walls and the piers butt against it.
    const double two_walls = walls - (2 * b * reach - strip_in_disc(R, b));
    CHECK(ground.ground_course.area ==
          Approx(pi * (R * R - r * r) + two_walls + piers).epsilon(1e-12));
}

TEST_CASE("joined domes share their floor, or the one has what the other's wall leaves") {
    const double apart = 90 * inch;
    const GroundPlan open = lay(two_stores(apart, "")).ground;
    CHECK(open.floor.area == Approx(2 * pi * r * r - lens(r, r, apart)).epsilon(1e-12));
    CHECK(open.footprint.area == Approx(2 * pi * R * R - lens(R, R, apart)).epsilon(1e-12));
    CHECK(open.footprint.loops.size() == 1);
    const GroundPlan kept = lay(two_stores(apart, "store")).ground;
    CHECK(kept.floor.area == Approx(2 * pi * r * r - lens(r, R, apart)).epsilon(1e-12));
    CHECK(kept.footprint.area == Approx(open.footprint.area).epsilon(1e-12));
    // With no opening at its height the wall is what the footprint leaves of the floor.
    CHECK(kept.ground_course.area == Approx(kept.footprint.area - kept.floor.area).epsilon(1e-12));
    CHECK(open.ground_course.area == Approx(open.footprint.area - open.floor.area).epsilon(1e-12));
}
