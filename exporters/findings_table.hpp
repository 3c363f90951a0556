// Findings as a table for the terminal, in the design's unit.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright {

/// One line a finding, worst first: verdict, subject, code, value, limit, source, remedy; then how
/// many of each verdict there are. "No findings." and a line break where there are none.
std::string findings_table(const BuildingPlan& plan);

/// A value or limit of a finding in the design's unit: (0.2032, metre, feet) -> "8 in".
std::string finding_value(double value, FindingUnit kind, DisplayUnit unit);

} // namespace coilwright
