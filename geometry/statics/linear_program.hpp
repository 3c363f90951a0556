// Linear programs as plain data, and their solution. The only door to the solver behind them.
#pragma once

#include <limits>
#include <vector>

namespace coilwright {

inline constexpr double unlimited = std::numeric_limits<double>::infinity();

/// Least cost . x with low <= x <= high for each column and low <= (entries x) <= high for each
/// row. Entries of one row and column add up. Limits may be -unlimited or unlimited.
struct LinearProgram {
    struct Column {
        double low = -unlimited, high = unlimited;
        double cost = 0;
    };
    struct Row {
        double low = -unlimited, high = unlimited;
    };
    struct Entry {
        int row = 0, column = 0;
        double value = 0;
    };
    std::vector<Column> columns;
    std::vector<Row> rows;
    std::vector<Entry> entries;

    /// Each gives back the index of what it adds.
    int add_column(double low, double high, double cost = 0);
    int add_row(double low, double high);
    void add(int row, int column, double value);
};

enum class LinearOutcome {
    optimal,
    infeasible, // no x; `certificate` proves it
    unbounded,  // the cost falls without end
    undecided   // the solver gave up, or the program is not sound (see below)
};

struct LinearSolution {
    LinearOutcome outcome = LinearOutcome::undecided;
    double value = 0;                // optimal: cost . x
    std::vector<double> x;           // optimal: by column
    std::vector<double> row_prices;  // optimal: change of the value for each unit that the row's
                                     // active limit rises
    std::vector<double> certificate; // infeasible: a weight for each row, see certificate_gap
};

/// Solves it. min x + y with x + 2 y >= 4, 3 x + y >= 6, x, y >= 0 -> 2.8 at (1.6, 1.2), prices 0.4
/// and 0.2. Undecided where a limit is not a number, a low lies above its high, an entry is not
/// finite or names no row or column. Scale the data so that what matters is near 1: rows and
/// columns are held to 1e-9.
LinearSolution minimise(const LinearProgram& program);

/// How far a weighted sum of the rows misses what they ask for: (least that the rows' limits let
/// sum w_i row_i be) - (greatest that the columns' limits let it be). Positive: no x satisfies the
/// program (lemma of Farkas 1902). Columns without a limit on the side that matters must cancel:
/// what they leave over, up to `slack` for each, is passed over. x >= 3, x <= 1 as two rows with
/// weights 1 and -1 -> 2. -unlimited where the weights prove nothing.
double certificate_gap(const LinearProgram& program, const std::vector<double>& weights,
                       double slack = 1e-7);

} // namespace coilwright
