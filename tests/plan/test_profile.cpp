#include "geometry/plan/profile.hpp"

#include "tests/plan/reference_curve.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("pointed: the equilateral arch has its radius equal to its span") {
    // Any geometry text: rise = span sqrt 3 / 2.
    const Profile profile = pointed_profile(1, std::sqrt(3.0));
    CHECK(profile.radius == Approx(2).epsilon(1e-15));
    CHECK(half_width(profile, 1) == Approx(std::sqrt(3.0) - 1).epsilon(1e-14));
}

TEST_CASE("a profile made from a spec keeps what the spec gave") {
    ProfileSpec spec;
    spec.kind = ProfileKind::pointed;
    SECTION("arc radius") {
        spec.arc_radius = 3.0;
        const Profile profile = make_profile(spec, 2);
        CHECK(profile.rise == Approx(2.8284271247461903).epsilon(1e-15)); // sqrt 8
        CHECK(profile.radius == Approx(3).epsilon(1e-15));
    }
    SECTION("rise over span") {
        spec.rise_to_span = 1.0;
        CHECK(make_profile(spec, 2).rise == 4);
    }
    SECTION("a segment of a circle by its radius") {
        spec.kind = ProfileKind::segmental;
        spec.arc_radius = 5.0;
        CHECK(make_profile(spec, 3).rise == Approx(1).epsilon(1e-15)); // 3, 4, 5
    }
    SECTION("a drawn curve by its points alone") {
        spec.kind = ProfileKind::drawn;
        spec.points = {{0, 2}, {1, 1.5}, {2, 0}};
        const Profile profile = make_profile(spec, 2);
        CHECK(profile.half_span == 2);
        CHECK(profile.rise == 2);
    }
}

TEST_CASE("catenary: its parameter meets the springline to the last digits, flat or steep") {
    for (double steep = 0.05; steep <= 20; steep *= 1.07) {
        CAPTURE(steep);
        const double a = 1.7;
        const Profile profile = catenary_profile(a, steep * a);
        const long double c = profile.radius;
        // In long double, so that the test's own rounding does not count: a step of one unit in
        // the last place of c moves the reckoned rise by up to s coth(s / 2) - 1 such steps.
        const long double rise = c * (std::cosh(a / c) - 1);
        CHECK(std::abs(static_cast<double>(rise / (steep * a) - 1)) < 4e-15);
    }
}

TEST_CASE("every kind is the curve of its textbook form, and ends where it should") {
    Seeded seeded(20250101);
    for (int trial = 0; trial < 400; ++trial) {
        const Profile profile = random_profile(seeded);
        const ReferenceCurve reference =
            reference_curve(profile.kind, profile.half_span, profile.rise);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise);
        CHECK(half_width(profile, -1) == profile.half_span);
        CHECK(half_width(profile, 0) == profile.half_span);
        CHECK(half_width(profile, 1e-12 * profile.rise) ==
              Approx(profile.half_span).epsilon(1e-10));
        CHECK(half_width(profile, profile.rise) == 0);
        CHECK(half_width(profile, profile.rise + 1) == 0);
        CHECK(slope(profile, -1) == 0);
        const double y = profile.rise * seeded.between(0.001, 0.999);
        const long double s = reference.s_at_height(y);
        CHECK(half_width(profile, y) == Approx(static_cast<double>(reference.x(s)))
                                            .epsilon(0)
                                            .margin(1e-12 * profile.half_span));
        CHECK(slope(profile, y) ==
              Approx(static_cast<double>(reference.dx(s) / reference.dy(s))).epsilon(1e-10));
    }
}

TEST_CASE("slopes agree with differences of the curve") {
    Seeded seeded(7);
    for (int trial = 0; trial < 400; ++trial) {
        const Profile profile = trial % 4 == 0 ? random_drawn(seeded) : random_profile(seeded);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise);
        const double step = 1e-5 * profile.rise;
        const double y = profile.rise * seeded.between(0.01, 0.95);
        const double difference =
            (half_width(profile, y + step) - half_width(profile, y - step)) / (2 * step);
        // A drawn curve's slope has kinks at its knots.
        const double allowed = profile.kind == ProfileKind::drawn ? 2e-3 : 1e-6;
        CHECK(
            slope(profile, y) ==
            Approx(difference).epsilon(allowed).margin(allowed * profile.half_span / profile.rise));
        CHECK(slope(profile, y) <= 0);
    }
}

TEST_CASE("height and half-width are inverse to each other") {
    Seeded seeded(11);
    for (int trial = 0; trial < 1000; ++trial) {
        const Profile profile = trial % 3 == 0 ? random_drawn(seeded) : random_profile(seeded);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise);
        const double x = profile.half_span * seeded.between(1e-6, 1);
        const double y = height_at(profile, x);
        CHECK(y >= 0);
        CHECK(y <= profile.rise);
        // One step of rounding in y moves x by the slope there.
        const double rounding =
            1e-15 * profile.rise * (1 - slope(profile, std::min(y, profile.rise * (1 - 1e-15))));
        CHECK(half_width(profile, y) == Approx(x).epsilon(1e-12).margin(8 * rounding));
    }
}

TEST_CASE("the inverse takes the upper end of a plumb stretch") {
    const Profile profile = drawn_profile({{0, 2}, {0.5, 2}, {1.5, 1}, {2, 1}, {3, 0}});
    CHECK(height_at(profile, 2) == 0.5);
    CHECK(height_at(profile, 1) == 2);
    CHECK(height_at(profile, 0) == 3);
    CHECK(height_at(profile, 5) == 0.5);
    CHECK(height_at(profile, -1) == 3);
}

TEST_CASE("no profile widens upwards") {
    Seeded seeded(13);
    for (int trial = 0; trial < 300; ++trial) {
        const Profile profile = trial % 2 == 0 ? random_drawn(seeded) : random_profile(seeded);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise);
        double before = profile.half_span;
        bool narrows = true;
        for (int i = 0; i <= 500; ++i) {
            const double x = half_width(profile, profile.rise * i / 500);
            narrows = narrows && x <= before * (1 + 1e-15) && x >= 0;
            before = x;
        }
        CHECK(narrows);
    }
}

TEST_CASE("drawn: passes its points and draws straight lines and parabolas as they are") {
    const Profile line = drawn_profile({{0, 2}, {0.3, 1.7}, {1.1, 0.9}, {2, 0}});
    for (double y = 0; y < 2; y += 0.05)
        CHECK(half_width(line, y) == Approx(2 - y).epsilon(1e-14));
    // Three-point slopes are exact on a parabola; x = 1 - y^2 keeps within the limits of monotony.
    std::vector<std::pair<double, double>> points;
    for (const double y : {0.0, 0.25, 0.5, 0.75, 1.0})
        points.push_back({y, 1 - y * y});
    const Profile parabola = drawn_profile(points);
    for (double y = 0; y < 1; y += 0.01)
        CHECK(half_width(parabola, y) == Approx(1 - y * y).epsilon(1e-13));
    // By hand: slopes 0, 0 (a plumb span), and the end's three-point slope (3 (-1) - 0) / 2 = -1.5;
    // at the middle of the upper span 1/2 + 1.5/8.
    CHECK(half_width(drawn_profile({{0, 1}, {1, 1}, {2, 0}}), 1.5) == Approx(0.6875));
}
