// The schedule as JSON: the contract of docs/reference/schedule.md.
#pragma once

#include "geometry/base/design_change.hpp"
#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright {

/// schedule.json: SI, bearings in degrees, keys in a fixed order, numbers rounded to 1e-6, UTF-8,
/// final line break. Precondition: plan.sound().
std::string schedule_json(const BuildingPlan& plan);

/// Diagnostics or findings as JSON for `--json`.
std::string diagnostics_json(const std::vector<Diagnostic>& diagnostics,
                             const std::string& file_name);
/// `changes`: what was found to mend them, if it was sought.
std::string findings_json(const BuildingPlan& plan, const std::vector<Finding>& findings,
                          const std::vector<SoughtChanges>& changes = {});

} // namespace coilwright
