// Whether elements stand in each other's way in plan.
#pragma once

#include "geometry/plan/region.hpp"

namespace coilwright {

/// Whether two boxes overlap, by separating axes; touching, within height_tie, is no overlap.
bool overlap(const Box& a, const Box& b);
/// The same of a box and a disc.
bool overlap(const Box& box, const Vec2& centre, double radius);

} // namespace coilwright
