#include "geometry/report/formula_notes.hpp"

#include "geometry/base/length.hpp"

#include <cmath>

namespace coilwright {

void add_formulas(Flow& flow, ReportTable table) {
    flow.paragraph("How it is reckoned. " + formula_line(table));
    flow.space(2);
}

std::string cell(double value, int decimals) {
    return std::isfinite(value) ? fixed_text(value, decimals) : "-";
}

} // namespace coilwright
