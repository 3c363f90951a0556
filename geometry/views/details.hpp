// Details: how tubes, wire, sills, lintels, curbs and piers meet, drawn from the design's own
// numbers.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/views/view.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// The joint of courses with its wire, a sill, a lintel, the curb of the first dome with a skylight
/// or else the cap of the main one: those of them that the building has. In cuts x is the distance
/// from the pole, outwards, y the height above the floor. Precondition: plan.sound().
std::vector<View> detail_views(const BuildingPlan& plan);

/// Two courses of the first pier in plan, the pier upwards: on one the ring runs through, on the
/// other the pier runs in. None without piers.
std::vector<View> bond_details(const BuildingPlan& plan);

} // namespace coilwright
