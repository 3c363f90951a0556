// How roles look on paper.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/views/view.hpp"

namespace coilwright {

/// The stroke of a role: cut lines are the heaviest but for the ground's.
const Stroke& stroke_of(LineRole role);

/// The outline as points, arcs in pieces no longer than `chord` (in the outline's unit).
std::vector<Vec2> flattened(const Outline& outline, double chord);

} // namespace coilwright
