// The openings of a building as a table on sheets.
#pragma once

#include "geometry/views/drawing_sheet.hpp"

namespace coilwright {

/// Area of the frame's opening inside its frame and plaster, m2: the hole's outline moved in by
/// `by` on both sides, the head and the sill. Quadrature; exact for a square head.
double clear_area(const OpeningForm& form, double by);

/// Sheets with tag, name, wall, bearing, rough width and height, sill, head, frame and clear area
/// of every opening, and the clear heights of every dome.
std::vector<Sheet> opening_schedule(const Drafting& drafting);

} // namespace coilwright
