// The shell of one dome: every head and profile, held to the true wall.
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/solids/building_checks.hpp"
#include "tests/solids/sample_domes.hpp"
#include "tests/solids/wall_truth.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;

namespace {

SampleDome sample(ProfileKind profile) {
    SampleDome sample;
    sample.profile = profile;
    sample.openings = one_of_each_head();
    if (profile == ProfileKind::round) // lower: higher on its stem, for the same openings
        sample.springline = 1.27;
    if (profile == ProfileKind::drawn)
        sample.points = {{0, 1.3716}, {0.7, 1.3}, {1.5, 0.95}, {2.2, 0.45}, {2.7, 0}};
    return sample;
}

/// Greatest distance of facets, corners and edges from the true faces, by a grid on each facet.
double greatest_deviation(const BuildingShell& shell, const WallTruth& truth,
                          const std::vector<OpeningForm>& openings, double reach) {
    double worst = 0;
    for (std::uint32_t t = 0; t < shell.mesh.triangles.size(); ++t) {
        const std::string owner = owner_of(shell, t);
        const auto opening =
            std::find_if(openings.begin(), openings.end(),
                         [&](const OpeningForm& form) { return "opening." + form.id == owner; });
        const auto& [a, b, c] = shell.mesh.triangles[t];
        constexpr int grid = 4;
        for (int i = 0; i <= grid; ++i)
            for (int j = 0; i + j <= grid; ++j) {
                const Vec3 at = (i * shell.mesh.vertices[a] + j * shell.mesh.vertices[b] +
                                 (grid - i - j) * shell.mesh.vertices[c]) /
                                grid;
                worst =
                    std::max(worst, opening == openings.end()
                                        ? truth.off_dome(at, reach)
                                        : truth.off_opening(opening - openings.begin(), at, reach));
            }
    }
    return worst;
}

void hold_to_truth(const SampleDome& sample, double tolerance, double angle) {
    const DomeForm form = form_of(sample);
    const std::vector<OpeningForm> openings = openings_of(sample);
    const BuildingShell shell = mesh_building_shell(building_of(sample), tolerance);
    REQUIRE_FALSE(shell.fault);
    testing::check_solid(shell.mesh, angle);
    const WallTruth truth(form, openings);
    CHECK(greatest_deviation(shell, truth, openings, 2 * tolerance) <= tolerance);
    // No more can be lost or won than the tolerance over the whole skin; chords of inside and
    // outside make up for each other, so that it is less.
    const double off = volume(shell.mesh) - truth.volume();
    CHECK(std::abs(off) < 0.5 * tolerance * surface_area(shell.mesh));
}

} // namespace

TEST_CASE("every profile with every head is a sound solid within its tolerance") {
    for (const ProfileKind profile :
         {ProfileKind::pointed, ProfileKind::round, ProfileKind::catenary, ProfileKind::parabola,
          ProfileKind::drawn})
        for (const double tolerance : {0.01, 0.002}) {
            CAPTURE(word(profile), tolerance);
            hold_to_truth(sample(profile), tolerance, 10);
        }
}

TEST_CASE("tolerances from the least to the greatest are kept") {
    for (const double tolerance : {0.05, 0.02, 0.0005, 0.0001}) {
        CAPTURE(tolerance);
        SampleDome one = sample(ProfileKind::parabola);
        one.openings.erase(one.openings.begin() + 2, one.openings.end());
        hold_to_truth(one, tolerance, tolerance < 0.001 ? 2 : 15);
    }
}

TEST_CASE("skylights, their curbs and domes without a foundation") {
    for (const ProfileKind profile : {ProfileKind::pointed, ProfileKind::catenary}) {
        SampleDome open = sample(profile);
        open.skylight = 0.9;
        hold_to_truth(open, 0.002, 15);
    }
    SampleDome founded_on_floor = sample(ProfileKind::pointed);
    founded_on_floor.foundation = 0; // the door stands on the wall's foot
    hold_to_truth(founded_on_floor, 0.002, 15);
    founded_on_floor.openings.push_back(
        sample_opening("back", HeadKind::square, 180, 0.4, 0, 0.55));
    founded_on_floor.openings.erase(founded_on_floor.openings.begin() + 2,
                                    founded_on_floor.openings.begin() + 4);
    hold_to_truth(founded_on_floor, 0.002, 15);
}

TEST_CASE("an opening almost as wide as the room, and one at a bend of the wall") {
    SampleDome wide;
    wide.openings = {sample_opening("door", HeadKind::pointed, 40, 2.6, 0, 1.9, 1.4)};
    hold_to_truth(wide, 0.002, 5);
    // Sills, springings and crowns at and beside the springline, where a parabola bends inward.
    for (const double off : {0.0, 1e-7, 1e-5, 0.001, 0.02}) {
        CAPTURE(off);
        SampleDome bent = sample(ProfileKind::parabola);
        const double bend = bent.springline;
        bent.openings = {sample_opening("a", HeadKind::square, 0, 0.5, bend + off, 0.6),
                         sample_opening("b", HeadKind::square, 70, 0.5, 0.1, bend - 0.1 - off),
                         sample_opening("c", HeadKind::circle, 140, 0.3, bend + off, 0.3),
                         sample_opening("d", HeadKind::round, 210, 0.4, 0.1, bend - 0.1 + off),
                         sample_opening("e", HeadKind::pointed, 280, 0.5, 0.2, bend + off)};
        hold_to_truth(bent, 0.002, 5);
    }
}

TEST_CASE("halving the tolerance halves the error in volume, as second-order chords do") {
    // Of the wall below the last ring's middle: the rim of the cap is bounded by few chords.
    SampleDome open = sample(ProfileKind::pointed);
    open.skylight = 0.9;
    const WallTruth truth(form_of(open), openings_of(open));
    double before = 0;
    for (const double tolerance : {0.016, 0.004, 0.001}) {
        const BuildingShell shell = mesh_building_shell(building_of(open), tolerance);
        REQUIRE_FALSE(shell.fault);
        const double off = std::abs(volume(shell.mesh) - truth.volume());
        CAPTURE(tolerance, off, before);
        if (before > 0) {
            CHECK(before / off > 2.7); // 4 in the limit
            CHECK(before / off < 6);
        }
        before = off;
    }
}

TEST_CASE("turning a design turns its mesh and changes nothing else") {
    const SampleDome straight = sample(ProfileKind::catenary);
    const BuildingShell first = mesh_building_shell(building_of(straight), 0.004);
    for (const double degrees : {0.1, 33.3, 90.0, 211.07}) {
        SampleDome turned = straight;
        turned.datum = degrees;
        const BuildingShell second = mesh_building_shell(building_of(turned), 0.004);
        CHECK(second.mesh.triangles == first.mesh.triangles);
        CHECK(volume(second.mesh) == Approx(volume(first.mesh)).epsilon(1e-12));
    }
}

TEST_CASE("a round hole that touches the wall's foot in a line is refused, others are not") {
    SampleDome on_floor;
    on_floor.foundation = 0;
    const auto fault = [&](double sill) {
        on_floor.openings = {sample_opening("drain", HeadKind::circle, 0, 0.3, sill, 0.3)};
        return mesh_building_shell(building_of(on_floor), 0.002).fault;
    };
    REQUIRE(fault(0));
    CHECK(fault(0)->kind == ShapeFault::touching);
    CHECK(fault(0)->first == "opening.drain");
    CHECK(fault(0)->second == "dome.vault");
    CHECK_FALSE(fault(0.05));
    hold_to_truth(on_floor, 0.002, 5);
    CHECK_FALSE(fault(-0.1)); // cut off by the foot
    const BuildingShell cut = mesh_building_shell(building_of(on_floor), 0.002);
    CHECK(check_mesh(cut.mesh, true).solid());
}

TEST_CASE("openings up to the ceiling and into the cap leave sound solids") {
    SampleDome high;
    const double ceiling = form_of(high).ceiling();
    for (const double top : {ceiling - 1e-4, ceiling, ceiling + 0.1}) {
        CAPTURE(top - ceiling);
        high.openings = {sample_opening("slot", HeadKind::pointed, 0, 0.1, 1, top - 1, 0.4)};
        const BuildingShell shell = mesh_building_shell(building_of(high), 0.002);
        REQUIRE_FALSE(shell.fault);
        CHECK(check_mesh(shell.mesh, true).solid());
        CHECK(check_mesh(shell.mesh, true).components == 1);
    }
}

TEST_CASE("an opening wider than the room leaves no sliver unseen") {
    SampleDome wide;
    wide.openings = {sample_opening("gate", HeadKind::square, 0, 2.75, 0, 1)};
    const BuildingShell shell = mesh_building_shell(building_of(wide), 0.002);
    REQUIRE_FALSE(shell.fault);
    CHECK(check_mesh(shell.mesh, true).solid());
}

TEST_CASE("openings that overlap are one hole") {
    SampleDome two;
    two.openings = {sample_opening("a", HeadKind::square, 0, 0.6, 0.5, 0.6),
                    sample_opening("b", HeadKind::pointed, 15, 0.6, 0.7, 1)};
    const BuildingShell shell = mesh_building_shell(building_of(two), 0.002);
    REQUIRE_FALSE(shell.fault);
    const MeshCheck check = check_mesh(shell.mesh, true);
    CHECK(check.solid());
    // One hole through the wall: a sphere with one handle, V - E + F = 0 (Euler and Poincare).
    CHECK(shell.mesh.vertices.size() == shell.mesh.triangles.size() / 2);
}
