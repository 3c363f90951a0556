// What statics finds of tunnels, buttresses, lintels and the heads of openings.
#pragma once

#include "geometry/checks/building_statics.hpp"

#include <vector>

namespace coilwright {

/// `tunnel-safety`, `tunnel-corbel` (the form carries the courses) and `tunnel-abutment` (sliding
/// of its walls on the ground).
std::vector<Finding> tunnel_findings(const Design& design, const TunnelForm& tunnel,
                                     const TunnelAnalysis& analysis);

/// `buttress-sliding` and `buttress-overturning` of each pier under the thrust of its part of the
/// circle: its own width, and half of an opening or tunnel that starts within a tube's width of it.
std::vector<Finding> buttress_findings(const Design& design, const BuildingForm& building,
                                       const DomeForm& dome, const DomeAnalysis& analysis);

/// `lintel-bending` and `lintel-bearing` of each lintel, `fan-head` of each head laid as a fan.
std::vector<Finding> opening_findings(const BuildingPlan& plan);

/// `open-plan-rings` of each join that keeps no wall: never judged, with what is missing of both
/// domes' rings.
std::vector<Finding> open_plan_findings(const BuildingPlan& plan);

} // namespace coilwright
