// A paper sheet as SVG: lines, arcs and fills as they are, text as text.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <string>

namespace coilwright {

/// SVG 1.1 of the sheet's size in millimetres on white. Text names DejaVu Sans and the common
/// families after it; a viewer that has none of them may set it a little wider. Numbers to 1 um.
/// Throws std::runtime_error where a number is not finite.
std::string svg_text(const Sheet& sheet);

} // namespace coilwright
