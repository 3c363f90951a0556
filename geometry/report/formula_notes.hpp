// What stands under the tables of the report, and numbers in their cells.
#pragma once

#include "geometry/base/length.hpp"
#include "geometry/checks/formulas.hpp"
#include "geometry/drawing/page.hpp"

#include <cmath>
#include <string>

namespace coilwright {

/// The formulas of a table, below it.
inline void add_formulas(Flow& flow, ReportTable table) {
    flow.paragraph("How it is reckoned. " + formula_line(table));
    flow.space(2);
}

/// A number of a table; "-" where it has no limit.
inline std::string cell(double value, int decimals) {
    return std::isfinite(value) ? fixed_text(value, decimals) : "-";
}

} // namespace coilwright
