// The whole building from above: its wall in the first course over the floor.
#pragma once

#include "geometry/drawing/page.hpp"

namespace coilwright {

/// Draws the building to scale in a box: poles and datum lines of its domes, and the names of all
/// that stands in the wall or against it.
void add_site(Sheet& sheet, const PaperBox& box, const Drafting& drafting);

} // namespace coilwright
