// Where things lie on the paper, in millimetres: boxes of items and whether they meet.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <array>

namespace coilwright {

/// An upright rectangle on the paper.
struct PaperBox {
    double left = 0, bottom = 0, right = 0, top = 0;
    double width() const { return right - left; }
    double height() const { return top - bottom; }
    Vec2 centre() const { return {(left + right) / 2, (bottom + top) / 2}; }
};

/// The box moved outwards by `by` on every side (inwards if negative).
PaperBox grown(const PaperBox& box, double by);
/// Whether `inner` lies in `outer`, both with their edges, within 1e-6 mm.
bool inside(const PaperBox& inner, const PaperBox& outer);

/// A rectangle that may be turned: its corners, anticlockwise.
using Corners = std::array<Vec2, 4>;

Corners corners(const PaperBox& box);
/// A segment as a rectangle of a width.
Corners corners(Vec2 from, Vec2 to, double width);
/// The ink of a line of text: its advance width by its ascent and descent, turned with it.
Corners corners(const TextItem& text, const MeasureText& measure);
/// The least upright box around corners.
PaperBox bounds(const Corners& corners);
/// The least upright box around an item, its stroke included.
PaperBox bounds(const PaperItem& item, const MeasureText& measure);

/// The item elsewhere on the paper.
PaperItem moved(PaperItem item, Vec2 by);

/// Whether two rectangles share more than a touch of 1e-6 mm (separating axes).
bool overlap(const Corners& a, const Corners& b);

} // namespace coilwright
