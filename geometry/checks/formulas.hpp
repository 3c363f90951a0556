// How the numbers in the tables of the engineer's report are reckoned, as data.
#pragma once

#include <string>
#include <vector>

namespace coilwright {

/// The tables of the report, and what is written under its sections.
enum class ReportTable {
    sections,
    tunnel_sections,
    courses,
    tunnel_courses,
    joints,
    membrane,
    piers,
    lintels
};

/// One column, or one number under a drawing.
struct ColumnFormula {
    std::string column;  // as it heads the table: "weight"
    std::string formula; // "density x g x section x r_c"
    std::string source;  // published, "geometry", or "statics of rigid bodies"
};

/// In the order of the columns; columns that only name a row (course, opening) are left out.
/// joints[0]: "normal", N/(r k), r the radius where the force acts, k the share of a strip that is
/// wall.
const std::vector<ColumnFormula>& formulas_of(ReportTable table);

/// One line of them: "normal: N/(r k), ... (statics of rigid bodies); thrust: ...".
std::string formula_line(ReportTable table);

} // namespace coilwright
