// Text made to fit: lines broken at words, sizes reduced, names cut short.
#pragma once

#include "geometry/drawing/boxes.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// The text in lines no wider than `width` mm, broken at blanks, and within a word only where the
/// word alone is wider. At least one line; at most `most_lines`, the last of them then ending in
/// "…".
std::vector<std::string> wrapped(const std::string& text, double width, double size, bool bold,
                                 const MeasureText& measure, std::size_t most_lines = 40);

/// The text, or its beginning with "…" where it is wider than `width`.
std::string shortened(const std::string& text, double width, double size, bool bold,
                      const MeasureText& measure);

/// The largest size from `wanted` down to `least` at which the text is no wider than `width`.
double fitting_size(const std::string& text, double width, double wanted, double least, bool bold,
                    const MeasureText& measure);

/// Puts lines on a sheet below `top` (the top of the first line's capitals' space), and returns the
/// height used: a line takes `leading` times its size.
double add_lines(Sheet& sheet, Vec2 top_left, const std::vector<std::string>& lines, double size,
                 bool bold);
double lines_height(std::size_t count, double size);

} // namespace coilwright
