// Rolls: never more than first-fit decreasing, never fewer than a bound, every piece cut once.
#include "geometry/takeoff/packing.hpp"

#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <functional>
#include <numeric>

using namespace coilwright;

namespace {

/// First-fit decreasing as any text describes it, on its own.
std::size_t first_fit_decreasing(std::vector<double> pieces, double roll) {
    std::sort(pieces.rbegin(), pieces.rend());
    std::vector<double> left;
    for (const double piece : pieces) {
        const auto room = std::find_if(left.begin(), left.end(),
                                       [&](double free) { return free >= piece - 1e-6; });
        if (room == left.end())
            left.push_back(roll - piece);
        else
            *room -= piece;
    }
    return left.size();
}

/// The fewest rolls, by trying every placing.
std::size_t fewest_rolls(const std::vector<double>& pieces, double roll) {
    std::vector<double> left;
    std::size_t best = pieces.size();
    const std::function<void(std::size_t)> place = [&](std::size_t i) {
        if (left.size() >= best)
            return;
        if (i == pieces.size()) {
            best = left.size();
            return;
        }
        for (std::size_t k = 0; k < left.size(); ++k)
            if (left[k] >= pieces[i] - 1e-9) {
                left[k] -= pieces[i];
                place(i + 1);
                left[k] += pieces[i];
            }
        left.push_back(roll - pieces[i]);
        place(i + 1);
        left.pop_back();
    };
    place(0);
    return best;
}

void check_plan(const RollPlan& plan, const std::vector<double>& pieces, double roll) {
    std::vector<int> used(pieces.size(), 0);
    for (const RollCuts& one : plan.rolls) {
        double sum = 0;
        for (const std::size_t piece : one.pieces) {
            ++used[piece];
            sum += pieces[piece];
        }
        CHECK(sum <= roll + 1e-5);
        CHECK(one.offcut == Approx(roll - sum).margin(1e-5));
    }
    for (std::size_t i = 0; i < pieces.size(); ++i)
        CHECK(used[i] == (pieces[i] > roll + 1e-6 ? 0 : 1));
    const double sum = std::accumulate(pieces.begin(), pieces.end(), 0.0);
    CHECK(plan.rolls.size() <= first_fit_decreasing(pieces, roll));
    CHECK(plan.rolls.size() >= plan.least);
    if (plan.too_long.empty())
        CHECK(static_cast<double>(plan.least) >= std::ceil(sum / roll - 1e-4));
}

} // namespace

TEST_CASE("rolls of random cuts keep their bounds") {
    for (std::uint64_t seed = 1; seed <= 300; ++seed) {
        testing::Dice dice(seed);
        const double roll = dice.between(5, 40);
        std::vector<double> pieces;
        for (int i = dice.whole(0, 120); i > 0; --i)
            pieces.push_back(dice.between(0.2, roll * dice.between(0.2, 1)));
        CAPTURE(seed);
        check_plan(pack_rolls(pieces, roll), pieces, roll);
    }
}

TEST_CASE("the bound is never more than the fewest rolls of all placings") {
    int better_than_sum = 0;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        testing::Dice dice(seed);
        std::vector<double> pieces;
        double sum = 0;
        for (int i = dice.whole(1, 9); i > 0; --i) {
            pieces.push_back(dice.between(1, 9));
            sum += pieces.back();
        }
        const RollPlan plan = pack_rolls(pieces, 10);
        const std::size_t fewest = fewest_rolls(pieces, 10);
        CAPTURE(seed);
        CHECK(plan.least <= fewest);
        CHECK(plan.rolls.size() >= fewest);
        better_than_sum += static_cast<double>(plan.least) > std::ceil(sum / 10) ? 1 : 0;
    }
    CHECK(better_than_sum > 10); // it is worth more than the sum alone
}

TEST_CASE("packing finds what first-fit decreasing misses") {
    // 6 5 5 4 into rolls of 10: first-fit decreasing takes 6 4 and 5 5, as does every text.
    // With 3.5s it opens a roll too many that emptying gives back, or keeps it: never more.
    const std::vector<double> easy{6, 5, 5, 4};
    CHECK(pack_rolls(easy, 10).rolls.size() == 2);
    CHECK(pack_rolls(easy, 10).least == 2);
    // Pieces over half a roll each stand alone: the sum alone would say 2.
    CHECK(pack_rolls({5.1, 5.1, 5.1}, 10).least == 3);
}

TEST_CASE("a piece as long as the roll fits, a longer one is told") {
    const RollPlan plan = pack_rolls({10, 10.0000004, 10.1, 3}, 10);
    CHECK(plan.too_long == std::vector<std::size_t>{2});
    CHECK(plan.rolls.size() == 3);
    CHECK(pack_rolls({}, 10).rolls.empty());
    CHECK(pack_rolls({}, 10).least == 0);
}
