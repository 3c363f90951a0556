// The clear room of a dome: what lies inside its plaster, above the finished floor.
#pragma once

#include "geometry/plan/wall_form.hpp"

#include <vector>

namespace coilwright {

/// The room's edge as a chain from the pole's top down to the floor: (distance from the pole,
/// height above the floor), chords no farther than `tolerance` from the plaster's face
/// (clear_height_at). The first point is at distance 0, the last at height 0. Openings and
/// neighbours are not in it. Precondition: the plaster leaves room.
std::vector<Vec2> clear_room_curve(const DomeForm& form, double inside_plaster, double tolerance);

/// Volume of the body that such a chain makes about the pole, m3: frusta, summed. A hemisphere of 1
/// m within 1 mm: 2.09.
double revolved_volume(const std::vector<Vec2>& chain);

} // namespace coilwright
