// A lintel as a beam under the triangle of wall that an arch above it would not carry.
#pragma once

#include "geometry/design/design.hpp"
#include "geometry/plan/heads.hpp"

namespace coilwright {

/// A beam on two supports with the wall over it; lengths m, N/m3, forces N.
struct LintelBeam {
    double span = 0;       // between the middles of its bearings
    double wall_above = 0; // height of wall over it, to the top or to the next opening's sill
    double wall_thickness = 0;
    double wall_unit_weight = 0;
    double depth = 0, width = 0; // of the beam
    double beam_unit_weight = 0;
    double bearing_area = 0; // of both ends, m2
    double plaster = 0;      // weight of that on both faces of the wall, N/m2
};

struct LintelForces {
    double wall_load = 0;    // whole weight of wall that it carries
    double load = 0;         // and its own
    double moment = 0;       // greatest, at mid-span, N m
    double shear = 0;        // greatest, at a support
    double bending = 0;      // 6 M/(b d2), Pa
    double shear_stress = 0; // 3 V/(2 b d), Pa
    double bearing = 0;      // pressure under its ends, Pa
};

/// The wall above arches itself over a triangle of 45 degrees (any handbook of masonry): its load
/// is min(x, L - x, h) high at x along the span. A whole triangle: W = g b L2/4, M = W L/6. L 1.2,
/// b 0.38, 17.28 kN/m3, h 1 -> 2364 N, 472.8 N m, without the beam's own weight. Preconditions:
/// lengths > 0.
LintelForces lintel_forces(const LintelBeam& beam);

/// The wall that a lintel lies in: to its top over the floor, as thick as it is over the lintel, m.
struct LintelWall {
    double top = 0, thickness = 0;
};

/// The beam of a laid lintel: its span, the wall over it, of the fill of the course on it, with
/// plaster on both faces; of no height where the lintel is the wall's top. `density`: of the
/// lintel, kg/m3 (the rules lintel-weight).
LintelBeam lintel_beam(const Design& design, const LintelWall& wall, const OpeningForm& opening,
                       const Lintel& lintel, double density);

} // namespace coilwright
