// Floor, footprint and ground course of the plan, held to sections of the solid.
#include "geometry/plan/lay.hpp"
#include "geometry/solids/building_shell.hpp"
#include "tests/solids/building_checks.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/home.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// The same with every sill over the floor: no way through a wall there but tunnels.
Design without_doors(Design design) {
    std::erase_if(design.openings, [](const Opening& opening) { return opening.sill < 0.05; });
    for (Dome& dome : design.domes)
        dome.datum.clear();
    return design;
}

} // namespace

TEST_CASE(
    "the solid's section at the floor is the footprint less the floor, in the trench the course") {
    constexpr double tolerance = 0.001;
    for (const Design& design :
         {without_doors(store_with_porch()), without_doors(two_stores(2.3, "")),
          without_doors(two_stores(2.3, "store")), without_doors(home_design())}) {
        CAPTURE(design.name, design.joins.size());
        const Schedule schedule = lay(design);
        const GroundPlan& ground = schedule.ground;
        REQUIRE(ground.floor.decided);
        REQUIRE(ground.footprint.decided);
        const BuildingShell shell = checked_shell(schedule.building, tolerance, 0.3);
        const double around = perimeter(ground.footprint) + perimeter(ground.floor);
        CHECK(slice_area(shell.mesh, 1e-5) ==
              Approx(ground.footprint.area - ground.floor.area).margin(tolerance * around));
        CHECK(
            slice_area(shell.mesh, schedule.courses[0].middle) ==
            Approx(ground.ground_course.area).margin(tolerance * perimeter(ground.ground_course)));
    }
}
