// From a dome's own frame to the design's, and the proof of what stands there.
#pragma once

#include "geometry/plan/wall_form.hpp"
#include "geometry/solids/mesh.hpp"

namespace coilwright {

/// Moves a mesh from the dome's own frame (pole's foot at the origin, x along the datum, y to its
/// left) to the design's (x east, y north).
void place(Mesh& mesh, const DomeForm& form);

/// Radians anticlockwise from the datum to a direction given as degrees clockwise from north.
/// Rounded to 1e-9 degrees, so that turning a whole design changes nothing in its domes' frames.
double angle_from_datum(const DomeForm& form, double bearing_degrees);

} // namespace coilwright
