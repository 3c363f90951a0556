#include "geometry/statics/linear_program.hpp"

#include <cmath>

namespace coilwright {

int LinearProgram::add_column(double low, double high, double cost) {
    columns.push_back({low, high, cost});
    return static_cast<int>(columns.size()) - 1;
}

int LinearProgram::add_row(double low, double high) {
    rows.push_back({low, high});
    return static_cast<int>(rows.size()) - 1;
}

void LinearProgram::add(int row, int column, double value) {
    entries.push_back({row, column, value});
}

double certificate_gap(const LinearProgram& program, const std::vector<double>& weights,
                       double slack) {
    if (weights.size() != program.rows.size())
        return -unlimited;
    double asked = 0;
    for (std::size_t i = 0; i < weights.size(); ++i) {
        const double limit = weights[i] > 0 ? program.rows[i].low : program.rows[i].high;
        if (weights[i] == 0)
            continue;
        if (!std::isfinite(limit)) {
            if (std::abs(weights[i]) > slack)
                return -unlimited;
            continue;
        }
        asked += weights[i] * limit;
    }
    std::vector<double> sums(program.columns.size(), 0.0);
    for (const LinearProgram::Entry& entry : program.entries)
        sums[static_cast<std::size_t>(entry.column)] +=
            weights[static_cast<std::size_t>(entry.row)] * entry.value;
    double had = 0;
    for (std::size_t j = 0; j < sums.size(); ++j) {
        const double limit = sums[j] > 0 ? program.columns[j].high : program.columns[j].low;
        if (std::isfinite(limit))
            had += sums[j] * limit;
        else if (std::abs(sums[j]) > slack)
            return -unlimited;
    }
    return asked - had;
}

} // namespace coilwright
