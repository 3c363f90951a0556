// The checks of a laid building beyond what the plan itself finds.
#pragma once

#include "geometry/base/design_change.hpp"
#include "geometry/checks/building_statics.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// Statics by limit analysis: one finding a check and subject, in the order of the elements. No
/// verdict says that anything is safe: these are what an engineer would work out first (see
/// docs/concepts/statics.md). Precondition: plan.sound().
std::vector<Finding> check_building(const BuildingPlan& plan);

/// Its parts: the statics of one dome with its buttresses, and of one tunnel.
std::vector<Finding> dome_checks(const BuildingPlan& plan, const DomeForm& dome);
std::vector<Finding> tunnel_checks(const BuildingPlan& plan, const TunnelForm& tunnel);
/// The same findings in the same order, the statics of each dome and tunnel by whoever knows them
/// already.
using DomeChecks = std::function<std::vector<Finding>(const DomeForm&)>;
using TunnelChecks = std::function<std::vector<Finding>(const TunnelForm&)>;
std::vector<Finding> check_building(const BuildingPlan& plan, const DomeChecks& of_dome,
                                    const TunnelChecks& of_tunnel);

/// The analyses of a building and all that is found of it: what the engineer's report tells.
struct CheckedBuilding {
    BuildingStatics statics;
    std::vector<Finding> findings;      // those of all_findings()
    std::vector<SoughtChanges> changes; // that mend them, where some were sought
};
CheckedBuilding checked_building(const BuildingPlan& plan);

/// What stands under all results: that they are not engineering.
std::string checks_caution();

/// What the plan found and check_building() finds, worst first. It draws no lines for a report, so
/// that a home of four domes is judged in less than 300 ms; checked_building() takes twice that.
std::vector<Finding> all_findings(const BuildingPlan& plan);

} // namespace coilwright
