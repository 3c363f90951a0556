// Putting items on a sheet, and the few line widths and greys that all sheets share.
#pragma once

#include "geometry/drawing/boxes.hpp"

namespace coilwright {

/// Line widths in mm, after the steps of technical drawing (ISO 128-20: 0.18, 0.25, 0.35, 0.5,
/// 0.7).
namespace pens {
inline const Stroke cut{0.5, {0}, {}};      // what a plan or section cuts
inline const Stroke seen{0.25, {0}, {}};    // edges beyond it, dimension lines
inline const Stroke fine{0.18, {0.35}, {}}; // rules, leaders
inline const Stroke axis{0.25, {0}, {6, 1.5, 0.8, 1.5}};
inline const Stroke hidden{0.25, {0.35}, {2, 1.2}};
inline const Stroke heavy{0.7, {0}, {}}; // frames around warnings, rules under headings
} // namespace pens

/// Sizes of text in mm (the em; capitals are 0.73 of it). Nothing on a sheet is smaller than
/// `least`.
namespace sizes {
inline constexpr double least = 2.8;
inline constexpr double small = 3.2;
inline constexpr double body = 4.0;
inline constexpr double strong = 4.6;
inline constexpr double heading = 6.0;
} // namespace sizes
/// Distance of baselines as a part of the size.
inline constexpr double leading = 1.32;

void add_line(Sheet& sheet, Vec2 from, Vec2 to, const Stroke& stroke);
void add_polyline(Sheet& sheet, std::vector<Vec2> points, const Stroke& stroke);
void add_box(Sheet& sheet, const PaperBox& box, const Stroke& stroke);
void add_circle(Sheet& sheet, Vec2 centre, double radius, const Stroke& stroke);
void add_fill(Sheet& sheet, const PaperBox& box, Ink ink);
/// A filled polygon.
void add_fill(Sheet& sheet, const std::vector<Vec2>& points, Ink ink);
void add_disc(Sheet& sheet, Vec2 centre, double radius, Ink ink);
/// A slim filled arrowhead of `length` whose tip is at `tip`, pointing along `direction`.
void add_arrowhead(Sheet& sheet, Vec2 tip, Vec2 direction, double length = 3);

TextItem text_at(Vec2 at, std::string text, double size, bool bold = false,
                 Align align = Align::left);
void add_text(Sheet& sheet, Vec2 at, std::string text, double size, bool bold = false,
              Align align = Align::left);

/// The edges along a circle about `centre` from one mathematical angle on by `sweep` radians
/// (negative: clockwise), in pieces of at most a quarter turn.
std::vector<FillItem::Edge> arc_edges(Vec2 centre, double radius, double from, double sweep);

} // namespace coilwright
