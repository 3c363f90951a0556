// The engineer's report: what the statics assumes, takes and finds, as sheets.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/drawing/paper.hpp"
#include "geometry/plan/plan_building.hpp"

#include <vector>

namespace coilwright {

/// Assumptions, materials and loads with their sources, each check with formula, values and source,
/// and for each dome and tunnel its section with lines of thrust, forces and courses in tables;
/// what was not considered, and room for a stamp. `findings`: those of all_findings(), worst first;
/// those with a formula are told. Precondition: plan.sound().
std::vector<Sheet> engineer_report(const BuildingPlan& plan, const std::vector<Finding>& findings,
                                   const PaperSize& paper, const MeasureText& measure);

} // namespace coilwright
