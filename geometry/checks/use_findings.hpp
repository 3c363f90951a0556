// Whether people can use the building: rooms, light, ways out, floor area. After plaster, frame and
// floor; clear heights under domes are in geometry/plan/headroom.hpp.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <vector>

namespace coilwright {

// Each below: one finding a check and subject, limits and sources from plan.design.limits; a limit
// that is not there is not judged against. Precondition: plan.sound().

/// `room-area`, `room-light`, `room-air`: of rooms that are lived in; an open plan is one room.
std::vector<Finding> room_findings(const BuildingPlan& plan);
/// `egress-door` of each building that is lived in, `escape-opening` of each of its rooms.
std::vector<Finding> way_out_findings(const BuildingPlan& plan);
/// `door-step`, `sill-near-ground` of the worst door and window, `tunnel-headroom` of each tunnel.
std::vector<Finding> passage_findings(const BuildingPlan& plan);
/// `permit-area` of each building, by inside and by outside area.
std::vector<Finding> permit_findings(const BuildingPlan& plan);

/// All of them, in that order.
std::vector<Finding> use_findings(const BuildingPlan& plan);

} // namespace coilwright
