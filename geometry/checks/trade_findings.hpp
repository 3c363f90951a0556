// What an experienced builder would ask of a laid building: shape, ground, openings, buttresses,
// work. The plan itself asks some of it first (geometry/plan/practice.hpp).
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <vector>

namespace coilwright {

// Each below: one finding a check and subject, limits and sources from plan.design.limits; a limit
// that is not there is not judged against. Precondition: plan.sound().

/// `dome-rise`, `coil-radius` of each dome.
std::vector<Finding> shape_practice_findings(const BuildingPlan& plan);
/// `foundation-courses`, `footing-depth`, `frost-depth`, `base-courses` of the whole.
std::vector<Finding> ground_practice_findings(const BuildingPlan& plan);
/// `opening-sum`, `opening-pier`, `opening-width` of each dome: for seismic zones; elsewhere not
/// judged where they do not hold.
std::vector<Finding> seismic_practice_findings(const BuildingPlan& plan);
/// `door-spacing`, `head-cover` of each dome, `lintel-rest` and `lintel-width` of each lintel.
std::vector<Finding> opening_practice_findings(const BuildingPlan& plan);
/// `buttress-at-opening` of each dome with a doorway.
std::vector<Finding> buttress_practice_findings(const BuildingPlan& plan);
/// `wire-strands` of each tube type, `daily-height` of each fill that must age.
std::vector<Finding> work_practice_findings(const BuildingPlan& plan);

/// All of them, in that order.
std::vector<Finding> trade_findings(const BuildingPlan& plan);

} // namespace coilwright
