// From a dome's own frame to the design's, and the proof of what stands there.
#pragma once

#include "geometry/plan/wall_form.hpp"
#include "geometry/solids/mesh.hpp"

namespace coilwright {

/// Moves a mesh from the dome's own frame (pole's foot at the origin, x along the datum, y to its
/// left) to the design's (x east, y north).
void place(Mesh& mesh, const DomeForm& form);

/// Moves a mesh from the frame of an axis (x along it from its origin, y to its left) to the
/// design's.
void place(Mesh& mesh, const Vec2& origin, const Vec2& axis);

/// Radians anticlockwise from the datum to a direction given as degrees clockwise from north.
/// Rounded to 1e-9 degrees, so that turning a whole design changes nothing in its domes' frames.
double angle_from_datum(const DomeForm& form, double bearing_degrees);

} // namespace coilwright
