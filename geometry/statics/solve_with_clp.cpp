// The one source that knows CLP, the COIN-OR simplex code.
#include "geometry/statics/linear_program.hpp"

#include <ClpSimplex.hpp>
#include <CoinPackedMatrix.hpp>

#include <cmath>

namespace coilwright {

namespace {

constexpr double tolerance = 1e-9;
/// Phase 1 leaves less than this over in a program that has a solution; data are near 1.
constexpr double feasible_within = 1e-8;

bool sound(const LinearProgram& program) {
    const auto ordered = [](double low, double high) { return low <= high; }; // false for NaN
    for (const LinearProgram::Column& column : program.columns)
        if (!ordered(column.low, column.high) || column.low == unlimited ||
            column.high == -unlimited || !std::isfinite(column.cost))
            return false;
    for (const LinearProgram::Row& row : program.rows)
        if (!ordered(row.low, row.high) || row.low == unlimited || row.high == -unlimited)
            return false;
    const int rows = static_cast<int>(program.rows.size());
    const int columns = static_cast<int>(program.columns.size());
    for (const LinearProgram::Entry& entry : program.entries)
        if (entry.row < 0 || entry.row >= rows || entry.column < 0 || entry.column >= columns ||
            !std::isfinite(entry.value))
            return false;
    return true;
}

double clp_limit(double value) {
    return std::isfinite(value) ? value : value > 0 ? COIN_DBL_MAX : -COIN_DBL_MAX;
}

void load(ClpSimplex& model, const LinearProgram& program) {
    std::vector<int> rows, columns;
    std::vector<double> values;
    for (const LinearProgram::Entry& entry : program.entries) {
        rows.push_back(entry.row);
        columns.push_back(entry.column);
        values.push_back(entry.value);
    }
    CoinPackedMatrix matrix(true, rows.data(), columns.data(), values.data(),
                            static_cast<CoinBigIndex>(values.size()));
    matrix.setDimensions(static_cast<int>(program.rows.size()),
                         static_cast<int>(program.columns.size()));
    std::vector<double> column_low, column_high, cost, row_low, row_high;
    for (const LinearProgram::Column& column : program.columns) {
        column_low.push_back(clp_limit(column.low));
        column_high.push_back(clp_limit(column.high));
        cost.push_back(column.cost);
    }
    for (const LinearProgram::Row& row : program.rows) {
        row_low.push_back(clp_limit(row.low));
        row_high.push_back(clp_limit(row.high));
    }
    model.setLogLevel(0);
    model.setPrimalTolerance(tolerance);
    model.setDualTolerance(tolerance);
    model.loadProblem(matrix, column_low.data(), column_high.data(), cost.data(), row_low.data(),
                      row_high.data());
}

LinearSolution read(const ClpSimplex& model, const LinearProgram& program) {
    LinearSolution solution;
    solution.outcome = LinearOutcome::optimal;
    solution.value = model.rawObjectiveValue();
    const double* x = model.primalColumnSolution();
    const double* prices = model.dualRowSolution();
    solution.x.assign(x, x + program.columns.size());
    solution.row_prices.assign(prices, prices + program.rows.size());
    return solution;
}

bool solves(ClpSimplex& model) {
    model.initialSolve();
    return model.status() == 0;
}

/// Slower, and without the presolve that the first way may have stumbled over.
bool solves_plainly(ClpSimplex& model) {
    model.allSlackBasis(true);
    model.primal();
    return model.status() == 0;
}

/// The same limits, each row allowed to miss its own at a cost of 1 a unit. Its value is 0 if and
/// only if the program has a solution; if not, its prices are the proof.
LinearProgram phase_one(const LinearProgram& program) {
    LinearProgram relaxed = program;
    for (LinearProgram::Column& column : relaxed.columns)
        column.cost = 0;
    for (int row = 0; row < static_cast<int>(program.rows.size()); ++row) {
        relaxed.add(row, relaxed.add_column(0, unlimited, 1), 1);
        relaxed.add(row, relaxed.add_column(0, unlimited, 1), -1);
    }
    return relaxed;
}

} // namespace

LinearSolution minimise(const LinearProgram& program) {
    LinearSolution solution;
    if (!sound(program))
        return solution;
    ClpSimplex model;
    load(model, program);
    if (solves(model))
        return read(model, program);

    // What it says of a program without an optimum is not taken on its word: a proof is.
    const LinearProgram relaxed = phase_one(program);
    ClpSimplex relaxed_model;
    load(relaxed_model, relaxed);
    const bool relaxed_solved = solves(relaxed_model) || solves_plainly(relaxed_model);
    const LinearSolution proof = relaxed_solved ? read(relaxed_model, relaxed) : LinearSolution{};
    if (relaxed_solved && proof.value > feasible_within &&
        certificate_gap(program, proof.row_prices) > 0) {
        solution.outcome = LinearOutcome::infeasible;
        solution.certificate = proof.row_prices;
        return solution;
    }
    if (solves_plainly(model))
        return read(model, program);
    if (relaxed_solved && proof.value <= feasible_within && model.status() == 2)
        solution.outcome = LinearOutcome::unbounded;
    return solution;
}

} // namespace coilwright
