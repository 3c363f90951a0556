#include "geometry/plan/clear_outline.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

ClearOutline outline(HeadKind head, double width, double sill, double height, double rise,
                     double lost) {
    Opening written;
    written.width = width;
    written.sill = sill;
    written.height = height;
    written.head.kind = head;
    if (rise > 0)
        written.head.rise = rise;
    OpeningPlan plan;
    plan.form = make_opening_form(written);
    plan.frame_width = lost;
    return clear_outline(plan);
}

} // namespace

TEST_CASE("a rectangle loses plaster and frame on every side") {
    const ClearOutline window = outline(HeadKind::square, 0.9, 0.8, 1.2, 0, 0.05);
    CHECK(clear_half_width(window, 1.0) == Approx(0.40));
    CHECK(clear_half_width(window, 0.84) == 0);
    CHECK(clear_half_width(window, 1.96) == 0);
    CHECK(clear_area(window) == Approx(0.8 * 1.1).epsilon(1e-3));
    const auto best = largest_rectangle(window, 0.5, 0.5);
    REQUIRE(best);
    CHECK(best->area() == Approx(0.8 * 1.1));
    CHECK(best->bottom == Approx(0.85));
    CHECK_FALSE(largest_rectangle(window, 0.81, 0.5));
    CHECK_FALSE(largest_rectangle(window, 0.5, 1.11));
}

TEST_CASE("a circle: the square in it has half of pi times less area") {
    const ClearOutline eye = outline(HeadKind::circle, 1.0, 1.0, 1.0, 0, 0.1);
    CHECK(clear_area(eye) == Approx(pi * 0.16).epsilon(1e-3));
    const auto best = largest_rectangle(eye, 0.1, 0.1);
    REQUIRE(best);
    CHECK(best->area() == Approx(2 * 0.16).epsilon(1e-3)); // inscribed square: 2 r^2
    CHECK(best->width == Approx(std::sqrt(2.0) * 0.4).epsilon(0.01));
    CHECK(best->bottom == Approx(1.5 - std::sqrt(0.5) * 0.4).epsilon(0.01));
}

TEST_CASE("under a round head a strip reaches the circle of the clear radius") {
    const ClearOutline door = outline(HeadKind::round, 1.0, 0, 2.0, 0, 0.1);
    CHECK(top_over_width(door, 0.48) == Approx(1.5 + std::sqrt(0.16 - 0.24 * 0.24)));
    CHECK(clear_half_width(door, 1.5 + 0.24) == Approx(std::sqrt(0.16 - 0.24 * 0.24)));
    CHECK(top_over_width(door, 0.81) < door.bottom);
    // Area: plumb part from the sill (a window: 0.1 up) and a half circle.
    CHECK(clear_area(door) == Approx(0.8 * 1.4 + pi * 0.16 / 2).epsilon(1e-3));
}
