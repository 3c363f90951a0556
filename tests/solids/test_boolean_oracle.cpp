// The patches' shell against Booleans that share no code with it but the wall's own form.
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/solids/boolean_oracle.hpp"
#include "tests/solids/sample_domes.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

void compare(const SampleDome& sample) {
    const double tolerance = 0.002;
    const DomeForm form = form_of(sample);
    const std::vector<OpeningForm> openings = openings_of(sample);
    const BuildingShell shell = mesh_building_shell(building_of(sample), tolerance);
    REQUIRE_FALSE(shell.fault);
    const Mesh oracle = wall_by_booleans(form, openings, 144);
    // 144 edges to a circle of 1.75 m: a sag of 0.4 mm.
    CHECK(check_mesh(oracle, false).closed);
    CHECK(volume(shell.mesh) ==
          Approx(volume(oracle)).margin(0.5 * tolerance * surface_area(shell.mesh)));
    const Bounds a = bounds(shell.mesh), b = bounds(oracle);
    CHECK((a.low - b.low).norm() < 2 * tolerance);
    CHECK((a.high - b.high).norm() < 2 * tolerance);
    // Points that one has inside and the other not can lie only in a skin as thick as the
    // tolerance.
    Seeded random(20);
    std::vector<Vec3> points;
    constexpr int count = 6000;
    for (int i = 0; i < count; ++i)
        points.emplace_back(random.between(a.low.x(), a.high.x()),
                            random.between(a.low.y(), a.high.y()),
                            random.between(a.low.z(), a.high.z()));
    const std::vector<bool> in_shell = inside(shell.mesh, points),
                            in_oracle = inside(oracle, points);
    int apart = 0, both = 0;
    for (int i = 0; i < count; ++i) {
        apart += in_shell[i] != in_oracle[i];
        both += in_shell[i] && in_oracle[i];
    }
    const Vec3 size = a.high - a.low;
    const double box = size.x() * size.y() * size.z();
    const double skin = tolerance * surface_area(shell.mesh);
    CHECK(apart <= count * skin / box);
    CHECK(both == Approx(count * volume(oracle) / box).epsilon(0.15));
}

} // namespace

TEST_CASE("shells agree with Booleans on the same forms") {
    SampleDome sample;
    sample.openings = one_of_each_head();
    SECTION("pointed, closed") {
        compare(sample);
    }
    SECTION("catenary with a skylight") {
        sample.profile = ProfileKind::catenary;
        sample.skylight = 0.9;
        compare(sample);
    }
    SECTION("parabola, its door on the wall's foot") {
        sample.profile = ProfileKind::parabola;
        sample.foundation = 0;
        compare(sample);
    }
    SECTION("round on a tall stem") {
        sample.profile = ProfileKind::round;
        sample.springline = 1.27;
        compare(sample);
    }
}
