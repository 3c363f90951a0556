// The patches' shell against Booleans that share no code with it but the wall's own form.
#include "geometry/plan/check_layout.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/solids/boolean_oracle.hpp"
#include "tests/solids/sample_domes.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/home.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

void compare(const Mesh& mesh, const Mesh& oracle, double tolerance) {
    // 144 edges to a circle of 1.75 m: a sag of 0.4 mm; 120 to one of 2.9 m: 1 mm.
    CHECK(check_mesh(oracle, false).closed);
    CHECK(volume(mesh) == Approx(volume(oracle)).margin(0.5 * tolerance * surface_area(mesh)));
    const Bounds a = bounds(mesh), b = bounds(oracle);
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
    const std::vector<bool> in_shell = inside(mesh, points), in_oracle = inside(oracle, points);
    int apart = 0, both = 0;
    for (int i = 0; i < count; ++i) {
        apart += in_shell[i] != in_oracle[i];
        both += in_shell[i] && in_oracle[i];
    }
    const Vec3 size = a.high - a.low;
    const double box = size.x() * size.y() * size.z();
    const double skin = tolerance * surface_area(mesh);
    CHECK(apart <= count * skin / box);
    CHECK(both == Approx(count * volume(oracle) / box).epsilon(0.15));
}

void compare(const SampleDome& sample) {
    const double tolerance = 0.002;
    const BuildingShell shell = mesh_building_shell(building_of(sample), tolerance);
    REQUIRE_FALSE(shell.fault);
    compare(shell.mesh, by_booleans(wall_steps(form_of(sample), openings_of(sample), 144)),
            tolerance);
}

void compare(const Design& design) {
    for (const Diagnostic& fault : check_layout(design))
        FAIL(fault.message);
    const double tolerance = 0.004;
    const auto parts = building_parts(make_building_form(design));
    REQUIRE(parts.size() == 1);
    const BuildingShell shell = mesh_building_shell(parts[0].building, tolerance);
    REQUIRE_FALSE(shell.fault);
    compare(shell.mesh, by_booleans(building_steps(parts[0].building, 120)), tolerance);
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

TEST_CASE("shells of whole buildings agree with Booleans") {
    Design design = home_design();
    SECTION("the home, its kept wall and its niche left out") {
        compare(home_for_booleans());
    }
    SECTION("one dome with a porch, open at its end, and an opening in its side") {
        std::erase_if(design.domes, [](const Dome& dome) { return dome.id != "big"; });
        std::erase_if(design.openings, [](const Opening& opening) { return opening.in != "big"; });
        std::erase_if(design.buttresses, [](const Buttress& pier) { return pier.on != "big"; });
        std::erase_if(design.tunnels, [](const Tunnel& tunnel) { return tunnel.id != "porch"; });
        design.joins.clear();
        design.tunnels[0].end_wall = false;
        Opening side = opening("side", 0, 0.3, 0.5, 0.3, HeadKind::circle);
        side.in = "porch";
        side.side = TunnelSide::right;
        side.along = 4;
        design.openings.push_back(side);
        compare(design);
    }
}
