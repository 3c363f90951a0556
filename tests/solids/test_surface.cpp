// Surfaces and their flattenings: there and back, angles kept, spacing that keeps the tolerance.
#include "geometry/base/bearing.hpp"
#include "geometry/solids/revolved_surface.hpp"
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

TEST_CASE("section pieces give back the place of their points") {
    const SectionPiece line = straight_piece({1, 2}, {4, 6});
    CHECK(line.length() == Approx(5));
    CHECK(line.place(line.at(1.25)) == Approx(1.25));
    CHECK(line.distance({1, 2 + 5}) == Approx(3)); // (-4, 3) / 5 across, times (0, 5)
    const SectionPiece arc = arc_piece({1, 0}, 2, pi / 6, 2 * pi / 3);
    CHECK(arc.length() == Approx(4 * pi / 3));
    CHECK(arc.start.x() == Approx(1 + std::sqrt(3.0)));
    CHECK(arc.end.x() == Approx(1 - std::sqrt(3.0)));
    for (const double s : {0.0, 0.5, 2.0, arc.length()})
        CHECK(arc.place(arc.at(s)) == Approx(s).margin(1e-12));
    const SectionPiece back = arc_piece({0, 0}, 1, pi, -pi); // over the top, from left to right
    CHECK(back.at(pi / 2).y() == Approx(1));
    CHECK(back.place({0, 1}) == Approx(pi / 2));
    CHECK(back.distance({0, 1.25}) == Approx(0.25));
}

TEST_CASE("an extruded surface is developed without strain") {
    const ExtrudedSurface surface({1, 2, 3}, {0.6, 0.8}, arc_piece({0, 0}, 0.5, 0, pi), 0.002);
    Seeded random(7);
    for (int i = 0; i < 50; ++i) {
        const Vec2 flat(random.between(-2, 2), random.between(0, pi / 2));
        const Vec3 at = surface.point(flat);
        CHECK((surface.flatten(at) - flat).norm() < 1e-12);
        CHECK(surface.deviation(at) < 1e-12);
        const double small = 1e-6;
        for (const Vec2& step : {Vec2(small, 0), Vec2(0, small), Vec2(small, small)})
            CHECK((surface.point(flat + step) - at).norm() == Approx(step.norm()).epsilon(1e-4));
    }
    // Half a metre from the axis line through the section's centre.
    const Vec3 at = surface.point({0.7, 1.0}) - Vec3(1, 2, 3);
    CHECK((at - at.dot(Vec3(0.6, 0.8, 0)) * Vec3(0.6, 0.8, 0)).norm() == Approx(0.5));
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
