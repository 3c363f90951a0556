// Volumes and surfaces of published solids through the patch mesher, errors falling with the
// tolerance as second-order chords let them.
#include "geometry/base/bearing.hpp"
#include "geometry/plan/profile.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/patch.hpp"
#include "geometry/solids/revolved_surface.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

Chain circle(Mesh& mesh, double r, double z, double tolerance) {
    const int count =
        std::max(8, static_cast<int>(std::ceil(2 * pi * r / std::sqrt(6.8 * tolerance * r))));
    Chain chain{{}, true, "circle"};
    for (int i = 0; i < count; ++i) {
        chain.vertices.push_back(static_cast<std::uint32_t>(mesh.vertices.size()));
        mesh.vertices.emplace_back(r * std::cos(2 * pi * i / count),
                                   r * std::sin(2 * pi * i / count), z);
    }
    return chain;
}

/// The solid that a falling curve sweeps about the pole from its foot up to where a circle of
/// `least` is left, closed by flat discs. `side` gets the area of the swept surface.
Mesh swept(const Section& meridian, double tolerance, double& side) {
    Mesh mesh;
    const RevolvedSurface surface(meridian, 0.86 * tolerance);
    const LevelSurface foot(meridian.low), top(meridian.high);
    const Chain low = circle(mesh, meridian.offset(meridian.low), meridian.low, tolerance);
    const Chain high = circle(mesh, meridian.offset(meridian.high), meridian.high, tolerance);
    REQUIRE_FALSE(mesh_patch({&surface, {low, high}, {}, false}, tolerance, mesh));
    side = surface_area(mesh);
    REQUIRE_FALSE(mesh_patch({&foot, {low}, {}, true}, tolerance, mesh));
    REQUIRE_FALSE(mesh_patch({&top, {high}, {}, false}, tolerance, mesh));
    REQUIRE(check_mesh(mesh, true).solid());
    return mesh;
}

void expect(const Section& meridian, double volume_of, double surface_of) {
    double before = 0;
    for (const double tolerance : {0.016, 0.004, 0.001}) {
        CAPTURE(tolerance);
        double side = 0;
        const Mesh mesh = swept(meridian, tolerance, side);
        const double off = volume_of - volume(mesh);
        CHECK(off > 0);
        CHECK(off < tolerance * side);
        CHECK(side == Approx(surface_of).epsilon(2 * tolerance));
        if (before > 0)
            CHECK(before / off == Approx(4).epsilon(0.35));
        before = off;
    }
}

} // namespace

TEST_CASE("pointed domes of revolution on a radius of 2") {
    // Arc radii 2 (a half sphere), 3 and 4: volumes and surfaces by Pappus (reckoned).
    const double volumes[] = {16.755161, 21.471960, 25.317774};
    const double surfaces[] = {25.132741, 30.111557, 34.424479};
    for (int i = 0; i < 3; ++i) {
        const double rho = 2 + i;
        const Profile profile = pointed_profile(2, std::sqrt(4 * rho - 4));
        CHECK(profile.radius == Approx(rho));
        // Up to a disc of 2 mm, which leaves out nothing that counts.
        expect({[=](double z) { return half_width(profile, z); }, 0, height_at(profile, 0.002), {}},
               volumes[i], surfaces[i]);
    }
}

TEST_CASE("the cap of a sphere: radius 4, height 1.5") {
    // Volume pi h^2 (3 R - h) / 3 = 24.740042, surface 2 pi R h = 37.699112 (reckoned).
    const double below = 2.5; // from the sphere's centre to the cap's base
    expect({[=](double z) { return std::sqrt(16 - (z + below) * (z + below)); },
            0,
            std::sqrt(16 - 4e-6) - below,
            {}},
           24.740042, 37.699112);
}

TEST_CASE("a sphere of 2 bored through its centre by a cylinder of radius 0.5") {
    // What the two have in common is 3.091982 (reckoned): the sphere less the ring that is left.
    double before = 0;
    for (const double tolerance : {0.016, 0.004, 0.001}) {
        CAPTURE(tolerance);
        // The upper half of the ring, from the equator up; mirrored it would be the whole.
        Mesh mesh;
        const double high = std::sqrt(4 - 0.25);
        const RevolvedSurface sphere({[](double z) { return std::sqrt(4 - z * z); }, 0, high, {}},
                                     0.86 * tolerance);
        const RevolvedSurface bore({[](double) { return 0.5; }, 0, high, {}}, 0.86 * tolerance);
        const LevelSurface equator(0);
        const Chain rim = circle(mesh, 2, 0, tolerance), foot = circle(mesh, 0.5, 0, tolerance),
                    mouth = circle(mesh, 0.5, high, tolerance);
        REQUIRE_FALSE(mesh_patch({&sphere, {rim, mouth}, {}, false}, tolerance, mesh));
        REQUIRE_FALSE(mesh_patch({&bore, {foot, mouth}, {}, true}, tolerance, mesh));
        REQUIRE_FALSE(mesh_patch({&equator, {rim, foot}, {}, true}, tolerance, mesh));
        CHECK(check_mesh(mesh, true).solid());
        const double common = 4.0 / 3 * pi * 8 - 2 * volume(mesh);
        const double off = common - 3.091982;
        CHECK(std::abs(off) < 2 * tolerance * surface_area(mesh));
        if (before > 0)
            CHECK(before / off == Approx(4).epsilon(0.35));
        before = off;
    }
}
