// The shells of the demo designs: sound solids, each section at a course's middle of the area of
// that course's exact region, wherever they stand.
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "tests/solids/building_checks.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/files.hpp"
#include "tests/support/moved_designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

std::vector<double> shell_volumes(const Design& design) {
    std::vector<double> volumes;
    for (const BuildingPart& part : building_parts(make_building_form(design))) {
        const BuildingShell shell = mesh_building_shell(part.building, 0.002);
        REQUIRE_FALSE(shell.fault);
        volumes.push_back(volume(shell.mesh));
    }
    std::sort(volumes.begin(), volumes.end());
    return volumes;
}

std::vector<double> exact_volumes(const Design& design) {
    std::vector<double> volumes;
    for (const BuildingPart& part : building_parts(make_building_form(design)))
        volumes.push_back(volume_by_areas(part.building));
    std::sort(volumes.begin(), volumes.end());
    return volumes;
}

} // namespace

TEST_CASE("the shell of every demo has the sections of its courses") {
    const std::vector<std::string> names = demo_files();
    CHECK(names.size() >= 8);
    for (const std::string& name : names) {
        CAPTURE(name);
        const BuildingPlan plan = demo_plan(name);
        for (const BuildingPart& part : building_parts(plan.schedule.building))
            checked_shell(part.building, 0.002, 0.3);
    }
}

// Of areas cut exactly the volume is the same to rounding. Facets are not mirror images of each
// other, and those of a patch that is itself symmetric fall one way or the other: there the
// tolerance of the surface, 2 mm, is what bounds the change.
TEST_CASE("the wall of every demo keeps its volume when it is turned, moved or mirrored") {
    for (const std::string& name : demo_files()) {
        CAPTURE(name);
        Design design = demo_plan(name).design;
        name_datums(design);
        const Design turned = turned_and_moved(design, 203.71, {-31.4, 15.9});
        const Design mirror = mirrored(design);
        const std::vector<double> exact = exact_volumes(design), shells = shell_volumes(design);
        CHECK_THAT(exact_volumes(turned), Catch::Approx(exact).epsilon(1e-9));
        CHECK_THAT(exact_volumes(mirror), Catch::Approx(exact).epsilon(1e-9));
        CHECK_THAT(shell_volumes(turned), Catch::Approx(shells).epsilon(1e-6));
        CHECK_THAT(shell_volumes(mirror), Catch::Approx(shells).epsilon(3e-5));
    }
}
