// What stands under the tables of the report, and numbers in their cells.
#pragma once

#include "geometry/checks/formulas.hpp"
#include "geometry/drawing/page.hpp"

#include <string>

namespace coilwright {

/// The formulas of a table, below it.
void add_formulas(Flow& flow, ReportTable table);

/// A number of a table; "-" where it has no limit.
std::string cell(double value, int decimals);

} // namespace coilwright
