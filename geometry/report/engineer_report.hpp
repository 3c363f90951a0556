// The engineer's report: what the statics assumes, takes and finds, as sheets.
#pragma once

#include "geometry/checks/check_building.hpp"
#include "geometry/drawing/paper.hpp"

#include <vector>

namespace coilwright {

/// Assumptions, materials and loads with their sources, each check with formula, values and source,
/// and for each dome and tunnel its section with lines of thrust, forces and courses in tables;
/// what was not considered, and room for a stamp. Findings with a formula come first, with the
/// changes that mend them where some were sought; those of layout, use and practice last.
/// Preconditions: plan.sound(); `checked` is of the same plan.
std::vector<Sheet> engineer_report(const BuildingPlan& plan, const CheckedBuilding& checked,
                                   const PaperSize& paper, const MeasureText& measure);

} // namespace coilwright
