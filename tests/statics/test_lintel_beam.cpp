// Lintels under the triangle of wall above them, by handbook formulas and by quadrature.
#include "geometry/plan/lay.hpp"
#include "geometry/statics/lintel_beam.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("a whole triangle of wall: W = g b L2/4, moment W L/6") {
    // Beam tables of any handbook: a triangular load with its peak at mid-span.
    LintelBeam beam{1.2, 1, 0.38, 17280, 0.15, 0.3, 0, 0.2};
    const LintelForces forces = lintel_forces(beam);
    CHECK(forces.wall_load == Approx(17280 * 0.38 * 1.2 * 1.2 / 4));
    CHECK(forces.wall_load == Approx(2364).epsilon(0).margin(0.5));
    CHECK(forces.moment == Approx(forces.wall_load * 1.2 / 6));
    CHECK(forces.moment == Approx(472.8).epsilon(0).margin(0.05));
    CHECK(forces.shear == Approx(forces.wall_load / 2));
    CHECK(forces.bending == Approx(forces.moment * 6 / (0.3 * 0.15 * 0.15)));
    CHECK(forces.shear_stress == Approx(1.5 * forces.shear / 0.045));
    CHECK(forces.bearing == Approx(forces.load / 0.2));
    // Its own weight: q L2 / 8.
    beam.beam_unit_weight = 6000;
    const double q = 6000 * 0.15 * 0.3;
    CHECK(lintel_forces(beam).moment == Approx(forces.moment + q * 1.44 / 8));
    CHECK(lintel_forces(beam).load == Approx(forces.load + q * 1.2));
}

TEST_CASE("a low wall loads the lintel with what there is of it") {
    for (const double wall : {0.01, 0.2, 0.45, 0.6, 3.0}) {
        CAPTURE(wall);
        const LintelBeam beam{1.2, wall, 0.38, 17280, 0.15, 0.3, 0, 0.2};
        const LintelForces forces = lintel_forces(beam);
        // Load by strips; moment at mid-span from the left half.
        double load = 0, moment = 0;
        const int strips = 200000;
        for (int i = 0; i < strips; ++i) {
            const double x = (i + 0.5) * 1.2 / strips;
            const double dl = 17280 * 0.38 * std::min({x, 1.2 - x, wall}) * 1.2 / strips;
            load += dl;
            moment += x < 0.6 ? -dl * (0.6 - x) : 0;
        }
        moment += load / 2 * 0.6;
        CHECK(forces.wall_load == Approx(load).epsilon(1e-6));
        CHECK(forces.moment == Approx(moment).epsilon(1e-6));
    }
    // Very low: nearly even, so W L / 8.
    const LintelForces even = lintel_forces({2, 1e-4, 0.38, 17280, 0.15, 0.3, 0, 0.2});
    CHECK(even.moment == Approx(even.wall_load * 2 / 8).epsilon(1e-3));
}

TEST_CASE("the lintel of a laid door") {
    Design design = store_design();
    const double inch = metres_per_inch;
    design.openings.clear();
    design.domes[0].datum.clear();
    Opening door = opening("door", 90, 32 * inch, 0, 40 * inch, HeadKind::square);
    door.head.lintel = LintelSpec{};
    design.openings.push_back(door);
    const Schedule schedule = lay(design);
    REQUIRE(schedule.lintels.size() == 1);
    const DomeForm& dome = schedule.building.domes[0];
    const LintelBeam beam = lintel_beam(design, {dome.top(), 15 * inch},
                                        schedule.building.openings[0], schedule.lintels[0], 600);
    CHECK(beam.beam_unit_weight == Approx(600 * 9.80665));
    CHECK(beam.span == Approx(44 * inch)); // 32 and half of each 12 in bearing
    CHECK(beam.depth == Approx(5 * inch));
    CHECK(beam.width == Approx(10 * inch));
    CHECK(beam.wall_thickness == Approx(15 * inch));
    CHECK(beam.wall_above == Approx(dome.top() - 45 * inch));
    CHECK(beam.bearing_area > 0);
    CHECK(beam.bearing_area < 2 * 12 * 10 * inch * inch * (1 + 1e-9)); // both ends whole
    const LintelForces forces = lintel_forces(beam);
    CHECK(forces.wall_load == Approx(1762 * 9.80665 * 15 * inch * 44 * inch * 44 * inch / 4));
    CHECK(forces.bearing > 0);
}

TEST_CASE("a lintel carries the plaster on both faces of its wall") {
    // By hand: 17 in of wall of 110 pcf over (17 in)^2 is 313 lbf; 3-1/2 in of plaster of 106 pcf
    // (1700 kg/m3) over the same 62 lbf more.
    const double inch = metres_per_inch, pound = 4.4482216;
    Design design = store_design();
    design.finish.inside_plaster = 1.5 * inch;
    design.finish.outside_plaster = 2 * inch;
    OpeningForm opening;
    opening.half_width = 11 * inch;
    Lintel lintel;
    lintel.bearing = 12 * inch;
    lintel.depth = 5 * inch;
    lintel.width = 10 * inch;
    const LintelBeam beam = lintel_beam(design, {5, 17.1 * inch}, opening, lintel, 600);
    REQUIRE(beam.span == Approx(34 * inch)); // L^2/4 = (17 in)^2
    LintelBeam bare = beam;
    bare.plaster = 0;
    CHECK(lintel_forces(bare).wall_load / pound == Approx(315).margin(2));
    CHECK((lintel_forces(beam).wall_load - lintel_forces(bare).wall_load) / pound ==
          Approx(62).margin(0.5));
    CHECK(lintel_forces(beam).moment > lintel_forces(bare).moment);
}
