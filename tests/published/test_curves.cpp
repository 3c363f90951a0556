// Published values of arches, domes and surfaces of revolution.
#include "geometry/plan/lay.hpp"
#include "geometry/plan/profile.hpp"
#include "geometry/plan/section.hpp"
#include "tests/plan/reference_curve.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

// Each value is given to six decimals.
Approx six(double value) {
    return Approx(value).epsilon(0).margin(5.1e-7);
}

Profile by_arc_radius(double half_span, double radius) {
    ProfileSpec spec;
    spec.kind = ProfileKind::pointed;
    spec.arc_radius = radius;
    return make_profile(spec, half_span);
}

} // namespace

TEST_CASE("pointed dome of revolution: height, volume and inside surface") {
    // Reckoned from the integrals of an arc of radius R about the far side, span radius 2:
    // V = pi int (sqrt(R^2 - y^2) - (R - 2))^2 dy, S = 2 pi R int (R cos u - (R - 2)) du.
    // Several other formulas for these go round; R = 2 is a hemisphere and checks them.
    struct Row {
        double radius, height, volume, surface;
    };
    for (const Row& row : {Row{2, 2, 16.755161, 25.132741}, Row{3, 2.828427, 21.471960, 30.111557},
                           Row{4, 3.464102, 25.317774, 34.424479}}) {
        CAPTURE(row.radius);
        const Profile profile = by_arc_radius(2, row.radius);
        CHECK(profile.rise == six(row.height));
        CHECK(volume_between(profile, 0, profile.rise) == six(row.volume));
        CHECK(surface_between(profile, 0, profile.rise) == six(row.surface));
    }
}

TEST_CASE("equilateral and drop arch of span 1: rise, area, length") {
    // Equilateral: rise = span sqrt 3 / 2, area pi/3 - sqrt 3 / 4, length 2 pi / 3: two sixths of a
    // circle on the span (any geometry text). Drop arch of arc radius 3/4: reckoned.
    struct Row {
        double radius, rise, area, length;
    };
    for (const Row& row :
         {Row{1, 0.866025, 0.614185, 2.094395}, Row{0.75, 0.707107, 0.515638, 1.846439}}) {
        CAPTURE(row.radius);
        const Profile profile = by_arc_radius(0.5, row.radius);
        CHECK(profile.rise == six(row.rise));
        CHECK(area_between(profile, 0, profile.rise) == six(row.area));
        CHECK(2 * length_between(profile, 0, profile.rise) == six(row.length));
    }
}

TEST_CASE("spherical cap: volume and surface") {
    // V = pi h^2 (3 R - h) / 3, S = 2 pi R h (Archimedes; any geometry text). R 4, h 1.5.
    const Profile cap = segmental_profile(std::sqrt(4 * 4 - 2.5 * 2.5), 1.5);
    CHECK(cap.radius == Approx(4).epsilon(1e-14));
    CHECK(volume_between(cap, 0, 1.5) == six(24.740042));
    CHECK(surface_between(cap, 0, 1.5) == six(37.699112));
}

TEST_CASE("paraboloid of revolution: volume and surface") {
    // V = pi a^2 h / 2: half of its cylinder (Archimedes). S = pi a / (6 h^2) ((a^2 + 4 h^2)^(3/2)
    // - a^3) (any calculus text, from memory).
    const double a = 1.3, h = 2.1;
    const Profile profile = parabola_profile(a, h);
    CHECK(volume_between(profile, 0, h) == Approx(pi * a * a * h / 2).epsilon(1e-14));
    CHECK(surface_between(profile, 0, h) ==
          Approx(pi * a / (6 * h * h) * (std::pow(a * a + 4 * h * h, 1.5) - a * a * a))
              .epsilon(1e-13));
    // Area under a parabola: two thirds of its rectangle (Archimedes).
    CHECK(area_between(profile, 0, h) == Approx(2.0 / 3 * 2 * a * h).epsilon(1e-14));
}

TEST_CASE("catenary: length from its sag and parameter") {
    // L = 2 c sinh(a / c), and (c + h)^2 = c^2 + (L/2)^2 (any statics text, from memory).
    const Profile profile = catenary_profile(1.5, 3.0);
    const double c = profile.radius, half = length_between(profile, 0, 3.0);
    CHECK(half == Approx(c * std::sinh(1.5 / c)).epsilon(1e-14));
    CHECK((c + 3) * (c + 3) == Approx(c * c + half * half).epsilon(1e-13));
}

TEST_CASE(
    "the quadrature that the closed forms are held against gives the perimeter of an ellipse") {
    // Half-axes 2 and 1: 9.68844822 (complete elliptic integral, any table). No profile is an
    // ellipse: this checks the tests' own Simpson rule.
    const ReferenceCurve quarter{
        [](long double s) { return 2 * std::cos(s); }, [](long double s) { return std::sin(s); },
        [](long double s) { return -2 * std::sin(s); }, [](long double s) { return std::cos(s); },
        [](long double y) { return std::asin(y); }};
    CHECK(4 * static_cast<double>(quarter.length(0, 1)) ==
          Approx(9.68844822).epsilon(0).margin(5e-9));
}
