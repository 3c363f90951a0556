#include "geometry/plan/profile.hpp"

#include "tests/plan/reference_curve.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

// Distance from a point inside to the face, plumb stem included: fine samples, then halving steps
// about the nearest one.
double distance_to_face(const Profile& profile, double x, double y) {
    const double bottom = -2 * profile.half_span, top = profile.rise;
    const auto gap = [&](double height) {
        return std::hypot(half_width(profile, height) - x, height - y);
    };
    double nearest = bottom, least = gap(bottom);
    const auto offer = [&](double height) {
        height = std::min(std::max(height, bottom), top);
        if (gap(height) < least) {
            least = gap(height);
            nearest = height;
        }
    };
    constexpr int samples = 2000;
    for (int i = 0; i <= samples; ++i) {
        offer(bottom + (top - bottom) * i / samples);
        // Even in half-width too: near the crown the curve runs level.
        offer(height_at(profile, profile.half_span * i / samples));
    }
    for (double step = (top - bottom) / samples; step > 1e-12 * profile.rise; step /= 2) {
        const double centre = nearest;
        offer(centre - step);
        offer(centre + step);
    }
    return least;
}

} // namespace

TEST_CASE("pointed: the plaster's face is an arc about the same centre") {
    // Concentric circles are parallel curves.
    const Profile profile = pointed_profile(1.35, 2.7);
    const double p = 0.038, rho = profile.radius;
    CHECK(offset_half_width(profile, p, 2.0) ==
          Approx(std::sqrt((rho - p) * (rho - p) - 4) - (rho - 1.35)).epsilon(1e-13));
    CHECK(offset_half_width(profile, p, -1) == 1.35 - p);
    CHECK(offset_half_width(round_profile(2), 0.05, 1.95) == Approx(0).margin(1e-7));
    CHECK(offset_height_at(round_profile(2), 0.05, 0) == Approx(1.95));
}

TEST_CASE("without plaster the face is the profile") {
    Seeded seeded(61);
    for (int trial = 0; trial < 100; ++trial) {
        const Profile profile = trial % 4 == 0 ? random_drawn(seeded) : random_profile(seeded);
        const double y = profile.rise * seeded.between(-0.2, 1.1);
        CHECK(offset_half_width(profile, 0, y) == half_width(profile, y));
        const double x = profile.half_span * seeded.between(0, 1);
        CHECK(offset_height_at(profile, 0, x) == height_at(profile, x));
    }
}

TEST_CASE("every point of the plaster's face is its thickness from the profile") {
    Seeded seeded(67);
    int judged = 0;
    for (int trial = 0; trial < 250; ++trial) {
        const Profile profile = trial % 4 == 0 ? random_drawn(seeded) : random_profile(seeded);
        const double p = profile.half_span * seeded.between(0.002, 0.2);
        const double y = seeded.between(-2 * p, profile.rise);
        const double x = offset_half_width(profile, p, y);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise, p, y, x);
        if (x == 0)
            continue; // nothing is left at that height
        ++judged;
        CHECK(distance_to_face(profile, x, y) == Approx(p).epsilon(0).margin(1e-6));
    }
    CHECK(judged > 150);
}

TEST_CASE("where nothing is left the axis lies nearer than the plaster's thickness") {
    Seeded seeded(71);
    int judged = 0;
    for (int trial = 0; trial < 150; ++trial) {
        const Profile profile = trial % 4 == 0 ? random_drawn(seeded) : random_profile(seeded);
        const double p = profile.half_span * seeded.between(0.02, 0.5);
        const double y = profile.rise * seeded.between(0.7, 1);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise, p, y);
        if (offset_half_width(profile, p, y) > 0)
            continue;
        ++judged;
        CHECK(distance_to_face(profile, 0, y) < p + 1e-6);
    }
    CHECK(judged > 20);
}

TEST_CASE("heights and half-widths of the plaster's face are inverse to each other") {
    Seeded seeded(73);
    for (int trial = 0; trial < 200; ++trial) {
        const Profile profile = trial % 4 == 0 ? random_drawn(seeded) : random_profile(seeded);
        const double p = profile.half_span * seeded.between(0.002, 0.2);
        const double x = (profile.half_span - p) * seeded.between(0.01, 0.99);
        const double y = offset_height_at(profile, p, x);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise, p, x, y);
        CHECK(y <= profile.rise - p + 1e-9);
        CHECK(offset_half_width(profile, p, y - 1e-9) >= x - 1e-7);
        CHECK(offset_half_width(profile, p, y + 1e-9) <= x + 1e-7);
    }
}

TEST_CASE("no stem is wider than the plaster leaves it") {
    for (const Profile& profile : {pointed_profile(1, 2), catenary_profile(1, 2),
                                   drawn_profile({{0, 1}, {1, 0.8}, {2, 0}})}) {
        CHECK(std::isinf(offset_height_at(profile, 0.05, 0.951)));
        CHECK(offset_height_at(profile, 0.05, 0.949) > -0.05);
        CHECK(offset_half_width(profile, 0.05, -1) == 0.95);
        CHECK(offset_half_width(profile, 1.5, 0.5) == 0);
        CHECK(offset_half_width(profile, 1.5, -5) == 0);
    }
}

TEST_CASE("thicker plaster leaves less, nowhere more than a level offset would") {
    Seeded seeded(79);
    for (int trial = 0; trial < 200; ++trial) {
        const Profile profile = trial % 4 == 0 ? random_drawn(seeded) : random_profile(seeded);
        const double p = profile.half_span * seeded.between(0.002, 0.1);
        const double y = profile.rise * seeded.between(0, 1);
        CAPTURE(trial, word(profile.kind), profile.half_span, profile.rise, p, y);
        const double x = offset_half_width(profile, p, y);
        CHECK(x <= std::max(0.0, half_width(profile, y) - p) + 1e-12);
        CHECK(offset_half_width(profile, 1.5 * p, y) <= x + 1e-12);
    }
}
