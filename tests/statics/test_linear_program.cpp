// Linear programs with answers worked by hand, and the two sides of duality on random ones.
#include "geometry/statics/linear_program.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

LinearProgram two_by_two() {
    LinearProgram program;
    const int x = program.add_column(0, unlimited, 1), y = program.add_column(0, unlimited, 1);
    const int first = program.add_row(4, unlimited), second = program.add_row(6, unlimited);
    program.add(first, x, 1);
    program.add(first, y, 2);
    program.add(second, x, 3);
    program.add(second, y, 1);
    return program;
}

/// Random rows on bounded columns; about half have no solution.
LinearProgram random_program(std::uint64_t seed) {
    testing::Dice dice(seed);
    LinearProgram program;
    const int columns = dice.whole(1, 6), rows = dice.whole(1, 8);
    for (int j = 0; j < columns; ++j) {
        const double low = dice.between(-2, 1);
        program.add_column(low, low + dice.between(0, 3), dice.between(-1, 1));
    }
    for (int i = 0; i < rows; ++i) {
        const double low = dice.between(-3, 3);
        program.add_row(dice.chance(0.3) ? -unlimited : low,
                        dice.chance(0.3) ? unlimited : low + dice.between(0, 2));
        for (int j = 0; j < columns; ++j)
            if (dice.chance(0.7))
                program.add(i, j, dice.between(-2, 2));
    }
    return program;
}

std::vector<double> row_values(const LinearProgram& program, const std::vector<double>& x) {
    std::vector<double> values(program.rows.size(), 0.0);
    for (const LinearProgram::Entry& entry : program.entries)
        values[static_cast<std::size_t>(entry.row)] +=
            entry.value * x[static_cast<std::size_t>(entry.column)];
    return values;
}

/// The greatest lower bound that the row prices prove for the cost over all x: weak duality.
double proved_bound(const LinearProgram& program, const std::vector<double>& prices) {
    double bound = 0;
    std::vector<double> reduced;
    for (const LinearProgram::Column& column : program.columns)
        reduced.push_back(column.cost);
    for (const LinearProgram::Entry& entry : program.entries)
        reduced[static_cast<std::size_t>(entry.column)] -=
            prices[static_cast<std::size_t>(entry.row)] * entry.value;
    for (std::size_t i = 0; i < prices.size(); ++i)
        if (std::abs(prices[i]) > 1e-9)
            bound += prices[i] * (prices[i] > 0 ? program.rows[i].low : program.rows[i].high);
    for (std::size_t j = 0; j < reduced.size(); ++j)
        bound += reduced[j] * (reduced[j] > 0 ? program.columns[j].low : program.columns[j].high);
    return bound;
}

} // namespace

TEST_CASE("a program solved by hand: value, place and prices") {
    // The two rows cross at (8/5, 6/5); prices solve p + 3 q = 1, 2 p + q = 1.
    const LinearSolution solution = minimise(two_by_two());
    REQUIRE(solution.outcome == LinearOutcome::optimal);
    CHECK(solution.value == Approx(14.0 / 5).epsilon(1e-12));
    CHECK(solution.x[0] == Approx(8.0 / 5).epsilon(1e-12));
    CHECK(solution.x[1] == Approx(6.0 / 5).epsilon(1e-12));
    CHECK(solution.row_prices[0] == Approx(2.0 / 5).epsilon(1e-12));
    CHECK(solution.row_prices[1] == Approx(1.0 / 5).epsilon(1e-12));
}

TEST_CASE("a price is what the next unit of its row costs") {
    LinearProgram program = two_by_two();
    const LinearSolution before = minimise(program);
    program.rows[0].low += 0.25;
    CHECK(minimise(program).value ==
          Approx(before.value + 0.25 * before.row_prices[0]).epsilon(1e-12));
}

TEST_CASE("entries of one row and column add up") {
    LinearProgram program;
    const int x = program.add_column(0, unlimited, 1);
    const int row = program.add_row(3, unlimited);
    program.add(row, x, 1);
    program.add(row, x, 0.5);
    CHECK(minimise(program).value == Approx(2));
}

TEST_CASE("no solution: the certificate adds the rows up to a contradiction") {
    LinearProgram program;
    const int x = program.add_column(-unlimited, unlimited);
    const int low = program.add_row(3, unlimited), high = program.add_row(-unlimited, 1);
    program.add(low, x, 1);
    program.add(high, x, 1);
    CHECK(certificate_gap(program, {1, -1}) == Approx(2));
    CHECK(certificate_gap(program, {1, -0.5}) == -unlimited); // x does not cancel
    CHECK(certificate_gap(program, {-1, 1}) == -unlimited);   // uses limits that are not there
    const LinearSolution solution = minimise(program);
    REQUIRE(solution.outcome == LinearOutcome::infeasible);
    CHECK(certificate_gap(program, solution.certificate) > 1);
}

TEST_CASE("a cost that falls without end") {
    LinearProgram program;
    const int x = program.add_column(0, unlimited, -1), y = program.add_column(0, unlimited, 0);
    const int row = program.add_row(-unlimited, 1);
    program.add(row, x, 1);
    program.add(row, y, -1);
    CHECK(minimise(program).outcome == LinearOutcome::unbounded);
    // Both without a solution and with a falling cost: the contradiction counts.
    const int lower = program.add_row(5, unlimited);
    program.add(lower, x, 1);
    program.add(lower, y, -1);
    CHECK(minimise(program).outcome == LinearOutcome::infeasible);
}

TEST_CASE("programs that are not sound are left undecided") {
    const auto outcome = [](auto change) {
        LinearProgram program = two_by_two();
        change(program);
        return minimise(program).outcome;
    };
    const double nan = std::nan("");
    CHECK(outcome([](LinearProgram&) {}) == LinearOutcome::optimal);
    CHECK(outcome([&](LinearProgram& p) { p.rows[0].low = nan; }) == LinearOutcome::undecided);
    CHECK(outcome([](LinearProgram& p) { p.rows[0].high = 3; }) == LinearOutcome::undecided);
    CHECK(outcome([](LinearProgram& p) { p.columns[0].low = unlimited; }) ==
          LinearOutcome::undecided);
    CHECK(outcome([&](LinearProgram& p) { p.columns[0].cost = nan; }) == LinearOutcome::undecided);
    CHECK(outcome([](LinearProgram& p) { p.add(0, 2, 1); }) == LinearOutcome::undecided);
    CHECK(outcome([](LinearProgram& p) { p.add(-1, 0, 1); }) == LinearOutcome::undecided);
    CHECK(outcome([](LinearProgram& p) { p.add(0, 0, unlimited); }) == LinearOutcome::undecided);
}

TEST_CASE("a program without rows or columns") {
    LinearProgram program;
    CHECK(minimise(program).outcome == LinearOutcome::optimal);
    program.add_column(-2, 5, 3);
    const LinearSolution solution = minimise(program);
    REQUIRE(solution.outcome == LinearOutcome::optimal);
    CHECK(solution.value == Approx(-6));
    LinearProgram empty_row;
    empty_row.add_row(1, unlimited);
    CHECK(minimise(empty_row).outcome == LinearOutcome::infeasible);
}

TEST_CASE("random programs: prices prove the optimum, certificates that there is none") {
    // Strong duality (Gale, Kuhn and Tucker 1951) and the lemma of Farkas: each answer is proved
    // here by arithmetic that the solver has no part in.
    int optimal = 0, infeasible = 0;
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        CAPTURE(seed);
        const LinearProgram program = random_program(seed);
        const LinearSolution solution = minimise(program);
        if (solution.outcome == LinearOutcome::infeasible) {
            ++infeasible;
            CHECK(certificate_gap(program, solution.certificate) > 0);
            continue;
        }
        REQUIRE(solution.outcome == LinearOutcome::optimal);
        ++optimal;
        const std::vector<double> values = row_values(program, solution.x);
        for (std::size_t i = 0; i < values.size(); ++i) {
            CHECK(values[i] >= program.rows[i].low - 1e-8);
            CHECK(values[i] <= program.rows[i].high + 1e-8);
        }
        CHECK(proved_bound(program, solution.row_prices) ==
              Approx(solution.value).epsilon(0).margin(1e-7));
    }
    CHECK(optimal > 50);
    CHECK(infeasible > 50);
}
