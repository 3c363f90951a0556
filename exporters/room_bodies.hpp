// Bodies of the clear rooms of a building, for models that hold space as well as walls.
#pragma once

#include "geometry/plan/building_rooms.hpp"
#include "geometry/solids/mesh.hpp"

#include <vector>

namespace coilwright {

/// Closed bodies that together fill a room without overlap, their faces outward: one a dome, parted
/// from the next in open plan where their plaster meets; one of a tunnel; where a kept wall stands
/// in the room, level slices of it. Within about 2 mm of the plaster; slices are stepped by less
/// than 3 cm. Doorways are not in them.
std::vector<Mesh> room_bodies(const BuildingForm& building, const BuildingRoom& room,
                              double inside_plaster);

} // namespace coilwright
