// Outlines moved in and out, against closed forms.
#include "geometry/base/bearing.hpp"
#include "geometry/templates/outlines.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

Outline rectangle(double width, double height) {
    return {{0, 0}, {{{width, 0}, 0}, {{width, height}, 0}, {{0, height}, 0}, {{0, 0}, 0}}};
}

Outline disc(double radius) {
    return {{0, -radius}, {{{0, radius}, 1}, {{0, -radius}, 1}}};
}

/// Half-width a, jambs of height j, a pointed head of radius rho.
Outline pointed(double a, double j, double rho) {
    const double rise = std::sqrt(rho * rho - (rho - a) * (rho - a));
    const double bulge = std::tan(std::acos((rho - a) / rho) / 4);
    return {{-a, 0},
            {{{a, 0}, 0}, {{a, j}, 0}, {{0, j + rise}, bulge}, {{-a, j}, bulge}, {{-a, 0}, 0}}};
}

/// Area under a pointed head: two segments of the circle of rho beside its own centre plane.
double pointed_area(double a, double j, double rho) {
    const double c = rho - a, h = std::sqrt(rho * rho - c * c);
    return 2 * (rho * rho / 2 * std::acos(c / rho) - c * h / 2) + 2 * a * j;
}

} // namespace

TEST_CASE("outlines: a rectangle grows and shrinks at its corners") {
    const Outline box = rectangle(2, 1);
    CHECK(area_of(box) == Approx(2));
    CHECK(length_of(box) == Approx(6));
    CHECK(area_of(moved_out(box, 0.1).value()) == Approx(2.2 * 1.2));
    CHECK(area_of(moved_out(box, -0.1).value()) == Approx(1.8 * 0.8));
    CHECK_FALSE(moved_out(box, -0.5).has_value()); // nothing is left
    CHECK_FALSE(moved_out(box, -0.7).has_value());
}

TEST_CASE("outlines: a circle keeps its centre") {
    CHECK(area_of(disc(0.3)) == Approx(pi * 0.09));
    CHECK(length_of(disc(0.3)) == Approx(2 * pi * 0.3));
    CHECK(area_of(moved_out(disc(0.3), 0.05).value()) == Approx(pi * 0.35 * 0.35));
    CHECK(area_of(moved_out(disc(0.3), -0.25).value()) == Approx(pi * 0.05 * 0.05));
    CHECK_FALSE(moved_out(disc(0.3), -0.3).has_value());
}

TEST_CASE("outlines: a pointed head moved in is the pointed head about the same centres") {
    for (const auto& [a, j, rho] : {std::array{0.4, 1.2, 0.8}, {0.4, 1.2, 0.45}, {0.3, 0.2, 1.5}}) {
        const Outline hole = pointed(a, j, rho);
        CAPTURE(a, j, rho);
        CHECK(area_of(hole) == Approx(pointed_area(a, j, rho)));
        for (const double in : {0.019, 0.06}) {
            // Half-width a - in, radius rho - in; the bottom comes up by as much.
            const Outline inner = moved_out(hole, -in).value();
            CHECK(area_of(inner) == Approx(pointed_area(a - in, j - in, rho - in)));
            // And back again.
            CHECK(area_of(moved_out(inner, in).value()) == Approx(area_of(hole)));
        }
    }
}

TEST_CASE("outlines: a half-round head stays smooth where it springs") {
    const double r = 0.35, j = 0.9;
    const Outline hole{{-r, 0}, {{{r, 0}, 0}, {{r, j}, 0}, {{-r, j}, 1}, {{-r, 0}, 0}}};
    const Outline inner = moved_out(hole, -0.02).value();
    CHECK(area_of(inner) == Approx(2 * 0.33 * (j - 0.02) + pi * 0.33 * 0.33 / 2));
    CHECK(length_of(inner) == Approx(2 * 0.33 + 2 * (j - 0.02) + pi * 0.33));
    // Half way along the arc stands the crown.
    const double to_crown = 2 * 0.33 + (j - 0.02) + pi * 0.33 / 2;
    const OutlinePlace crown = place_along(inner, to_crown);
    CHECK(crown.at.x() == Approx(0).margin(1e-9));
    CHECK(crown.at.y() == Approx(j + 0.33));
    CHECK(crown.outward.y() == Approx(1));
}

TEST_CASE("outlines: a hollow arc widens when the outline shrinks") {
    // A square with a quarter circle bitten out of a corner.
    const double b = -std::tan(pi / 8);
    const Outline bitten{{0, 0},
                         {{{1, 0}, 0}, {{1, 0.7}, 0}, {{0.7, 1}, b}, {{0, 1}, 0}, {{0, 0}, 0}}};
    CHECK(area_of(bitten) == Approx(1 - pi * 0.09 / 4));
    const Outline inner = moved_out(bitten, -0.1).value();
    // The bite about (1, 1) now has radius 0.4, the square ends 0.1 inside.
    const double r = 0.4, d = 0.1, c = std::sqrt(r * r - d * d);
    const double bite =
        r * r / 2 * (std::acos(d / r) - std::asin(d / r)) - d * c / 2 - d * c / 2 + d * d;
    CHECK(area_of(inner) == Approx(0.8 * 0.8 - bite).epsilon(1e-6));
}
