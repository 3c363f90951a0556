// Dimension lines: extension lines, oblique strokes at the ends, the figure above the line.
#pragma once

#include "geometry/drawing/placer.hpp"

#include <string>

namespace coilwright {

/// A dimension between two points of the drawing, measured along `along` (unit vector), its line at
/// distance `offset` to the left of `along` from the farther of the points. The figure stands above
/// the line (seen along it, never upside down); where it is longer than the line, it stands beyond
/// its end. Everything drawn is taken in the placer.
void add_dimension(Sheet& sheet, Placer& placer, Vec2 from, Vec2 to, Vec2 along, double offset,
                   const std::string& text, double size);

} // namespace coilwright
