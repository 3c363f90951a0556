#include "geometry/statics/lintel_beam.hpp"

#include "geometry/base/quantity.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

LintelForces lintel_forces(const LintelBeam& beam) {
    const double half = beam.span / 2, h = std::min(beam.wall_above, half);
    // N/m for each m of height
    const double line = beam.wall_unit_weight * beam.wall_thickness + beam.plaster;
    const double own = beam.beam_unit_weight * beam.depth * beam.width;
    LintelForces forces;
    forces.wall_load = line * h * (beam.span - h);
    forces.load = forces.wall_load + own * beam.span;
    // Half the load at the support, less what lies between it and mid-span: a ramp up to h, then
    // even.
    const double between = h * h / 2 * (half - 2 * h / 3) + h * (half - h) * (half - h) / 2;
    forces.moment = forces.wall_load / 2 * half - line * between + own * beam.span * beam.span / 8;
    forces.shear = forces.load / 2;
    forces.bending = 6 * forces.moment / (beam.width * beam.depth * beam.depth);
    forces.shear_stress = 1.5 * forces.shear / (beam.width * beam.depth);
    forces.bearing = beam.bearing_area > 0 ? forces.load / beam.bearing_area : INFINITY;
    return forces;
}

LintelBeam lintel_beam(const Design& design, const LintelWall& wall, const OpeningForm& opening,
                       const Lintel& lintel, double density) {
    LintelBeam beam;
    beam.span = 2 * opening.half_width + lintel.bearing;
    beam.wall_above = std::max(wall.top - (lintel.bottom + lintel.depth), 0.0);
    beam.wall_thickness = wall.thickness;
    beam.wall_unit_weight = standard_gravity * fill_density(design, lintel.last_course + 1).value;
    beam.plaster = standard_gravity * plaster_density().value *
                   (design.finish.inside_plaster + design.finish.outside_plaster);
    beam.depth = lintel.depth;
    beam.width = lintel.width;
    beam.beam_unit_weight = standard_gravity * density;
    beam.bearing_area = lintel.bearing_area;
    return beam;
}

} // namespace coilwright
