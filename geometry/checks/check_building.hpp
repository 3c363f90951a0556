// The checks of a laid building beyond what the plan itself finds.
#pragma once

#include "geometry/checks/building_statics.hpp"

#include <vector>

namespace coilwright {

/// Statics by limit analysis: one finding a check and subject, in the order of the elements. No
/// verdict says that anything is safe: these are what an engineer would work out first (see
/// docs/concepts/statics.md). Precondition: plan.sound().
std::vector<Finding> check_building(const BuildingPlan& plan);

/// The analyses of a building and all that is found of it: what the engineer's report tells.
struct CheckedBuilding {
    BuildingStatics statics;
    std::vector<Finding> findings; // those of all_findings()
};
CheckedBuilding checked_building(const BuildingPlan& plan);

/// What the plan found and check_building() finds, worst first.
std::vector<Finding> all_findings(const BuildingPlan& plan);

} // namespace coilwright
