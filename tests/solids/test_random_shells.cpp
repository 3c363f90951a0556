// Seeded random domes with openings: each that the layout check lets pass is a sound solid.
#include "geometry/plan/check_layout.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/solids/sample_domes.hpp"
#include "tests/solids/wall_truth.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>

using namespace coilwright;

namespace {

constexpr std::array profiles{ProfileKind::pointed, ProfileKind::round, ProfileKind::catenary,
                              ProfileKind::parabola, ProfileKind::drawn};
constexpr std::array heads{HeadKind::square, HeadKind::pointed, HeadKind::round,
                           HeadKind::segmental, HeadKind::circle};

Opening random_opening(Seeded& random, const SampleDome& dome, int number) {
    const double width = random.between(0.15, 0.5 * dome.diameter);
    const double sill = random.coin() ? dome.course_height * random.whole(0, 8)
                                      : random.between(0, 0.4 * dome.rise);
    const HeadKind head = random.one_of(heads);
    std::optional<double> rise;
    if (head == HeadKind::segmental)
        rise = width * random.between(0.1, 0.45);
    if (head == HeadKind::pointed)
        rise = width * random.between(0.55, 1.5);
    const double least = head == HeadKind::round ? width / 2 : rise.value_or(0.1);
    const double height =
        head == HeadKind::circle ? width : least + random.between(0, 0.5 * dome.rise);
    return sample_opening("o" + std::to_string(number), head, random.between(0, 360), width, sill,
                          height, rise);
}

SampleDome random_dome(Seeded& random) {
    SampleDome dome;
    dome.profile = random.one_of(profiles);
    dome.diameter = random.between(1.5, 9);
    dome.width = random.between(0.25, 0.5);
    dome.course_height = random.between(0.1, 0.17);
    dome.foundation = random.whole(0, 3);
    dome.springline =
        random.coin() ? dome.course_height * random.whole(0, 12) : random.between(0, 1.6);
    dome.rise = dome.diameter * random.between(0.55, 1.3);
    if (dome.profile == ProfileKind::round)
        dome.rise = dome.diameter / 2;
    if (dome.profile == ProfileKind::drawn)
        dome.points = {{0, dome.diameter / 2},
                       {0.3 * dome.rise, dome.diameter / 2 * random.between(0.8, 1)},
                       {0.7 * dome.rise, dome.diameter / 2 * random.between(0.3, 0.7)},
                       {dome.rise, 0}};
    if (random.whole(0, 2) == 0)
        dome.skylight = dome.diameter * random.between(0.2, 0.4);
    const int count = random.whole(0, 6);
    for (int i = 0; i < count; ++i) {
        dome.openings.push_back(random_opening(random, dome, i));
        if (!check_layout(design_of(dome)).empty())
            dome.openings.pop_back();
    }
    return dome;
}

} // namespace

TEST_CASE("random domes with openings are sound solids of the right volume") {
    int built = 0, openings = 0, refused = 0;
    double least = 90;
    for (std::uint64_t seed = 1; seed <= 120; ++seed) {
        CAPTURE(seed);
        Seeded random(seed);
        const SampleDome dome = random_dome(random);
        if (!check_layout(design_of(dome)).empty())
            continue; // too flat or too small for a ring
        const double tolerance = 0.004;
        const DomeForm form = form_of(dome);
        const std::vector<OpeningForm> forms = openings_of(dome);
        const BuildingShell shell = mesh_building_shell(building_of(dome), tolerance);
        if (shell.fault) { // a round hole that touches the wall's foot
            CHECK(shell.fault->kind == ShapeFault::touching);
            ++refused;
            continue;
        }
        const MeshCheck check = check_mesh(shell.mesh, true);
        CHECK(check.solid());
        CHECK(check.components == 1);
        CHECK(check.least_angle_degrees > 0.3);
        const double off = volume(shell.mesh) - WallTruth(form, forms).volume();
        CHECK(std::abs(off) < 0.5 * tolerance * surface_area(shell.mesh));
        least = std::min(least, check.least_angle_degrees);
        ++built;
        openings += static_cast<int>(forms.size());
    }
    CAPTURE(built, openings, refused, least);
    CHECK(built > 90);
    CHECK(openings > 150);
    CHECK(refused < 5);
}
