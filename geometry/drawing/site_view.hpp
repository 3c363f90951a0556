// All domes of a building from above: inside and outside of their walls at the floor.
#pragma once

#include "geometry/drawing/page.hpp"

namespace coilwright {

/// Draws the domes to scale in a box, each with its name, the poles' distances listed below.
void add_site(Sheet& sheet, const PaperBox& box, const Drafting& drafting);

} // namespace coilwright
