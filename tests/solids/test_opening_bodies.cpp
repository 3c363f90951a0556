// Forms, frames, fans and lintels as bodies, against closed forms of their areas.
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/opening_bodies.hpp"
#include "tests/solids/sample_domes.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

OpeningForm opening(HeadKind head, double width, double sill, double height,
                    std::optional<double> rise = {}) {
    return make_opening_form(sample_opening("hole", head, 0, width, sill, height, rise));
}

double checked_volume(const Mesh& mesh) {
    const MeshCheck check = check_mesh(mesh, true);
    CHECK(check.solid());
    CHECK(check.components == 1);
    return volume(mesh);
}

} // namespace

TEST_CASE("a square lining is its boards") {
    const OpeningForm hole = opening(HeadKind::square, 0.8, 0.5, 2);
    // Four boards: 0.8 x 2 less 0.76 x 1.96, 0.1 deep. Without a sill 0.76 x 1.98 are left out.
    CHECK(checked_volume(mesh_lining(hole, {0, 0.02, true, 1, 1.1}, 0.001)) ==
          Approx((0.8 * 2 - 0.76 * 1.96) * 0.1));
    CHECK(checked_volume(mesh_lining(hole, {0, 0.02, false, 1, 1.1}, 0.001)) ==
          Approx((0.8 * 2 - 0.76 * 1.98) * 0.1));
    const Bounds box = bounds(mesh_lining(hole, {0.03, 0.05, true, 1, 1.1}, 0.001));
    CHECK((box.low - Vec3(1, -0.37, 0.53)).norm() < 1e-12);
    CHECK((box.high - Vec3(1.1, 0.37, 2.47)).norm() < 1e-12);
}

TEST_CASE("arched linings are the ring between two curves about the same centres") {
    constexpr double depth = 0.1, a = 0.4, p = 0.05;
    // Round: two half rings' worth of jambs 0.6 high, a sill board between them, half an annulus.
    const double round =
        (pi / 2 * (a * a - (a - p) * (a - p)) + 2 * p * 0.6 + 2 * (a - p) * p) * depth;
    const OpeningForm arch = opening(HeadKind::round, 2 * a, 0.5, 1);
    double before = 0;
    for (const double tolerance : {0.004, 0.001, 0.00025}) {
        const double off = std::abs(
            checked_volume(mesh_lining(arch, {0, p, true, 1, 1 + depth}, tolerance)) - round);
        CHECK(off < tolerance * depth * 2 * pi * a);
        if (before > 0)
            CHECK(before / off == Approx(4).epsilon(0.5));
        before = off;
    }
    // Circle: an annulus.
    const OpeningForm eye = opening(HeadKind::circle, 2 * a, 0.5, 2 * a);
    CHECK(checked_volume(mesh_lining(eye, {0.01, p, true, 1, 1 + depth}, 0.0001)) ==
          Approx(pi * ((a - 0.01) * (a - 0.01) - (a - p) * (a - p)) * depth).epsilon(1e-3));
    // Pointed, equilateral: area of the arch on a span s is s^2 (pi / 3 - sqrt(3) / 4) (any text on
    // Gothic tracery); the inner arch has the same centres.
    const OpeningForm pointed = opening(HeadKind::pointed, 1, 0, 2, std::sqrt(3) / 2);
    const auto segment = [](double radius) { // half an arch whose centre lies 0.5 beyond the axis
        const double angle = std::acos(0.5 / radius);
        return radius * radius * angle / 2 - 0.125 * std::tan(angle);
    };
    CHECK(2 * segment(1) == Approx(pi / 3 - std::sqrt(3) / 4));
    const double jamb = 2 - std::sqrt(3) / 2;
    CHECK(checked_volume(mesh_lining(pointed, {0, p, false, 1, 1 + depth}, 0.0001)) ==
          Approx((2 * (segment(1) - segment(1 - p)) + 2 * p * jamb) * depth).epsilon(1e-3));
}

TEST_CASE("a head that starts at its sill has no jambs") {
    // Half a disc, and within it another about the same centre that ends on the sill board's top.
    const OpeningForm lunette = opening(HeadKind::round, 0.8, 1, 0.4);
    constexpr double r = 0.35, h = 0.05;
    const double half_angle = std::acos(h / r);
    const double inner = r * r * half_angle - h * std::sqrt(r * r - h * h); // circle's segment
    CHECK(checked_volume(mesh_lining(lunette, {0, 0.05, true, 1, 2}, 0.0001)) ==
          Approx(pi * 0.16 / 2 - inner).epsilon(2e-3));
}

TEST_CASE("an inset that leaves no hole leaves no lining") {
    CHECK(mesh_lining(opening(HeadKind::square, 0.1, 0, 0.5), {0, 0.05, true, 1, 2}, 0.001)
              .triangles.empty());
    CHECK(mesh_lining(opening(HeadKind::circle, 0.1, 0, 0.1), {0, 0.06, true, 1, 2}, 0.001)
              .triangles.empty());
}

TEST_CASE("a fan's bags fill the ring between the form and their outer curve") {
    SampleDome sample;
    sample.springline = 3; // a plumb wall: bags are prisms
    Opening round = sample_opening("eye", HeadKind::round, 0, 0.8, 0.889, 1);
    round.head.laid = HeadLaid::fan;
    round.head.depth = 0.38;
    sample.openings = {round};
    const BuildingForm building = building_of(sample);
    const OpeningForm& form = building.openings.front();
    const DomeForm& dome = building.domes.front();
    const Fan fan = *make_fan(form, dome.width, 10);
    const std::vector<Mesh> bags = mesh_fan(form, fan, dome, 0.0005);
    REQUIRE(static_cast<int>(bags.size()) == fan.count);
    CHECK(fan.count % 2 == 1);
    for (std::size_t i = 0; i < bags.size(); ++i) {
        CAPTURE(i);
        const double one = checked_volume(bags[i]);
        CHECK(one == Approx(volume(bags[bags.size() - 1 - i]))); // mirrored
        // Its share of the annulus times the wall's thickness along the axis where the bag lies.
        const double share = pi / 2 * (0.78 * 0.78 - 0.4 * 0.4) / fan.count;
        const Bounds box = bounds(bags[i]);
        CHECK(one == Approx(share * (box.high.x() - box.low.x())).epsilon(0.002));
    }
    // The keystone stands over the axis, its foot at the crown of the form.
    const Bounds keystone = bounds(bags[bags.size() / 2]);
    CHECK(keystone.low.y() == Approx(-keystone.high.y()));
    CHECK(keystone.high.z() == Approx(form.springing + 0.78));
    CHECK(keystone.low.x() == Approx(inside_radius(dome, form.springing)).epsilon(1e-6));
}

TEST_CASE("a lintel is a beam across the axis") {
    Lintel lintel;
    lintel.bottom = 2;
    lintel.depth = 0.2;
    lintel.width = 0.25;
    lintel.length = 1.4;
    lintel.centre_distance = 1.6;
    const Mesh mesh = mesh_lintel(lintel);
    CHECK(checked_volume(mesh) == Approx(0.2 * 0.25 * 1.4));
    const Bounds box = bounds(mesh);
    CHECK((box.low - Vec3(1.475, -0.7, 2)).norm() < 1e-12);
    CHECK((box.high - Vec3(1.725, 0.7, 2.2)).norm() < 1e-12);
}
