// Surfaces and their flattenings: there and back, angles kept, spacing that keeps the tolerance.
#include "geometry/base/bearing.hpp"
#include "geometry/solids/revolved_surface.hpp"
#include "geometry/solids/ruled_surface.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace coilwright;

namespace {

Section cone() {
    return {[](double z) { return 2 - z / 2; }, 0, 3, {}};
}

/// Sphere of radius 2 from its equator up to where a circle of radius 0.2 is left.
Section sphere() {
    return {[](double z) { return std::sqrt(4 - z * z); }, 0, std::sqrt(4 - 0.04), {}};
}

/// A stem of 1 m that leans in by `lean` above its middle.
Section bent(double lean) {
    return {[=](double z) { return z <= 0.5 ? 1.0 : 1 - lean * (z - 0.5); }, 0, 1, {0.5}};
}

} // namespace

TEST_CASE("an edge length from curvatures keeps the sag of chord and facet at the tolerance") {
    // A circle's chord of length h sags h^2 / 8 r, to second order.
    const double on_cylinder = edge_for_tolerance(1, 0, 0.002);
    CHECK(1 - std::sqrt(1 - on_cylinder * on_cylinder / 4) == Approx(0.002).epsilon(0.01));
    // An equilateral facet with corners on a unit sphere: its middle lies sqrt(1 - h^2 / 3) out.
    const double on_sphere = edge_for_tolerance(1, 1, 0.002);
    CHECK(1 - std::sqrt(1 - on_sphere * on_sphere / 3) == Approx(0.002).epsilon(0.01));
    CHECK(edge_for_tolerance(0, 0, 0.002) == std::numeric_limits<double>::infinity());
}

TEST_CASE("a ruled surface is developed without strain") {
    // A vault of radius 0.5, from its springing to near its crown, leaning to the left of a line.
    const RuledSurface surface({[](double z) { return std::sqrt(0.25 - z * z); }, 0, 0.49, {}},
                               0.002, {1, 2}, {0.8, -0.6});
    const double arc = 0.5 * std::asin(0.49 / 0.5);
    CHECK(surface.section()->nodes().back().arc == Approx(arc).epsilon(1e-4));
    Seeded random(7);
    for (int i = 0; i < 50; ++i) {
        const Vec2 flat(random.between(-2, 2), random.between(0.01, arc - 0.01));
        const Vec3 at = surface.point(flat);
        CHECK((surface.flatten(at) - flat).norm() < 1e-12);
        CHECK(surface.deviation(at) < 1e-5);
        const double small = 1e-3;
        for (const Vec2& step : {Vec2(small, 0), Vec2(0, small), Vec2(small, small)})
            CHECK((surface.point(flat + step) - at).norm() == Approx(step.norm()).epsilon(0.02));
        // 0.5 m from the line through the section's centre.
        const Vec3 off = at - Vec3(1, 2, 0);
        CHECK((off - off.dot(Vec3(0.6, 0.8, 0)) * Vec3(0.6, 0.8, 0)).norm() == Approx(0.5));
    }
    CHECK(surface.deviation({1 + 0.8 * 0.6, 2 - 0.6 * 0.6, 0}) == Approx(0.1).epsilon(0.01));
}

TEST_CASE("a battered face is plane but for its kinks, and asks for no points between them") {
    const RuledSurface pier({[](double z) { return z < 0 ? 1.5 : 1.5 - 0.5 * z; }, -0.5, 1, {0.0}},
                            0.002, {0, 0}, {0, 1});
    REQUIRE(pier.section()->kinks().size() == 1);
    CHECK(pier.section()->kinks().front() == 0);
    CHECK(pier.spacing({0, 0.1}) == std::numeric_limits<double>::infinity());
    CHECK(pier.pattern({-1, 0}, {1, 1}).empty());
    CHECK(pier.bend_between({0, 1.5, -0.5}, {0, 1.25, 0.5}) == Approx(0.5));
    // Out of the front: the development's two directions and the normal are right-handed.
    const Vec3 u = pier.point({1, 0.2}) - pier.point({0, 0.2});
    const Vec3 v = pier.point({0, 0.3}) - pier.point({0, 0.2});
    CHECK(u.x() * v.z() - u.z() * v.x() < 0); // y of the cross product is its opposite
    CHECK(pier.deviation({0.3, 1.5 - 0.25 + 0.01, 0.5}) ==
          Approx(0.01 / std::sqrt(1.25)).epsilon(1e-6));
}

TEST_CASE("a surface of revolution goes to its plane and back, and keeps angles") {
    for (const Section& meridian : {cone(), sphere()}) {
        const RevolvedSurface surface(meridian, 0.002);
        Seeded random(11);
        for (int i = 0; i < 200; ++i) {
            const double z = random.between(meridian.low, meridian.high);
            const double r = meridian.offset(z), angle = random.between(-pi, pi);
            const Vec3 at(r * std::cos(angle), r * std::sin(angle), z);
            const Vec2 flat = surface.flatten(at);
            CHECK((surface.point(flat) - at).norm() < 1e-9);
            CHECK(surface.deviation(at) < 0.002 / 100);
            // Two steps across each other in the plane are across each other, and alike, in space.
            const double small = 0.01 * flat.norm();
            if (z < meridian.low + 0.1 || z > meridian.high - 0.1)
                continue;
            const Vec3 in = surface.point(flat * (1 - 0.01)) - at;
            const Vec3 round =
                surface.point(flat + small * Vec2(-flat.y(), flat.x()).normalized()) - at;
            CHECK(in.norm() == Approx(round.norm()).epsilon(0.03));
            CHECK(std::abs(in.dot(round)) < 0.03 * in.norm() * round.norm());
        }
    }
}

TEST_CASE("a point off a surface of revolution is as far from it as it was moved") {
    const RevolvedSurface surface(sphere(), 0.002);
    for (const double up : {0.2, 0.7, 1.2, 1.45}) { // angles from the equator
        for (const double off : {0.01, -0.01, 0.001}) {
            const double r = (2 + off) * std::cos(up), z = (2 + off) * std::sin(up);
            CHECK(surface.deviation({0, r, z}) == Approx(std::abs(off)).margin(2e-5));
        }
    }
}

TEST_CASE("spacing follows curvature and never leaves fewer than eight edges round") {
    const RevolvedSurface fine(sphere(), 0.002);
    CHECK(fine.spacing_at(1) == Approx(edge_for_tolerance(0.5, 0.5, 0.002)).epsilon(0.02));
    const RevolvedSurface coarse(sphere(), 0.05);
    CHECK(coarse.spacing_at(sphere().high) <= 2 * pi * 0.2 / 8 + 1e-9);
}

TEST_CASE("a bend of the meridian is known where there is one") {
    REQUIRE(RevolvedSurface(bent(0.2), 0.002).kinks().size() == 1);
    CHECK(RevolvedSurface(bent(0.2), 0.002).kinks().front() == 0.5);
    CHECK(RevolvedSurface(bent(0), 0.002).kinks().empty());
    // A stem under a quarter circle: the curvature jumps, the direction does not.
    const Section smooth{
        [](double z) { return z <= 1 ? 1 : std::sqrt(1 - (z - 1) * (z - 1)); }, 0, 1.9, {1}};
    CHECK(RevolvedSurface(smooth, 0.002).kinks().empty());
    const RevolvedSurface surface(bent(0.2), 0.002);
    const Vec2 near = surface.flatten({1 - 0.2 * 0.01, 0, 0.51});
    CHECK(surface.point(surface.drawn_to_bend(near, 0.02)).z() == Approx(0.5));
    CHECK(surface.point(surface.drawn_to_bend(near, 0.005)).z() == Approx(0.51));
}

TEST_CASE("the pattern of a surface of revolution lies on it at about its spacing") {
    const RevolvedSurface surface(sphere(), 0.005);
    const std::vector<Vec2> pattern = surface.pattern({-2, -2}, {2, 2});
    const double spacing = surface.spacing_at(0.5);
    // A zone of height H of a sphere has area 2 pi R H; a point has sqrt(3)/2 h^2 of it.
    const double expected = 2 * pi * 2 * sphere().high / (std::sqrt(0.75) * spacing * spacing);
    CHECK(pattern.size() == Approx(expected).epsilon(0.15));
}
