// The same design elsewhere: turned, moved, mirrored.
#pragma once

#include "geometry/design/design.hpp"

namespace coilwright::testing {

/// Turned clockwise about the origin, then moved.
Design turned_and_moved(const Design& design, double degrees, const Vec2& by);

/// Its image in a mirror that runs north: bearings negated, east for west, a tunnel's left for its
/// right.
Design mirrored(const Design& design);

/// Names a datum in every dome that has an opening or a tunnel; false where one has neither: its
/// datum is north, which does not turn with the building.
bool name_datums(Design& design);

} // namespace coilwright::testing
