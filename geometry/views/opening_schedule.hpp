// The openings of a building as a table on sheets.
#pragma once

#include "geometry/views/drawing_sheet.hpp"

namespace coilwright {

/// Sheets with tag, name, wall, bearing, rough width and height, sill, head, frame and clear area
/// of every opening, and the clear heights of every dome.
std::vector<Sheet> opening_schedule(const Drafting& drafting);

} // namespace coilwright
