#include "geometry/takeoff/packing.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coilwright {

namespace {

constexpr double slack = 1e-6;

using Order = std::vector<std::size_t>;

/// `best`: into the fullest roll that takes the piece, else into the first.
std::vector<RollCuts> fit_decreasing(const std::vector<double>& pieces, const Order& order,
                                     double roll, bool best) {
    std::vector<RollCuts> rolls;
    for (const std::size_t piece : order) {
        RollCuts* taken = nullptr;
        for (RollCuts& one : rolls) {
            if (one.offcut + slack < pieces[piece])
                continue;
            if (!taken || one.offcut < taken->offcut)
                taken = &one;
            if (!best)
                break;
        }
        if (!taken)
            taken = &rolls.emplace_back(RollCuts{{}, roll});
        taken->pieces.push_back(piece);
        taken->offcut -= pieces[piece];
    }
    return rolls;
}

/// Moves the pieces of the emptiest roll into the others, where all of them fit; true if it is
/// gone.
bool empty_one(std::vector<RollCuts>& rolls, const std::vector<double>& pieces) {
    if (rolls.size() < 2)
        return false;
    const auto emptiest =
        std::max_element(rolls.begin(), rolls.end(),
                         [](const RollCuts& a, const RollCuts& b) { return a.offcut < b.offcut; });
    std::vector<RollCuts> others = rolls;
    const auto gone = others.begin() + (emptiest - rolls.begin());
    const Order moved = gone->pieces;
    others.erase(gone);
    for (const std::size_t piece : moved) {
        RollCuts* tightest = nullptr;
        for (RollCuts& one : others)
            if (one.offcut + slack >= pieces[piece] && (!tightest || one.offcut < tightest->offcut))
                tightest = &one;
        if (!tightest)
            return false;
        tightest->pieces.push_back(piece);
        tightest->offcut -= pieces[piece];
    }
    rolls = std::move(others);
    return true;
}

/// Over all thresholds k: pieces over roll - k stand alone, those over half a roll too, and what is
/// left of the latter must hold the pieces from k to a half.
std::size_t lower_bound_of(const std::vector<double>& pieces, const Order& order, double roll) {
    double sum = 0;
    for (const std::size_t piece : order)
        sum += pieces[piece];
    const auto up = [](double rolls) {
        return static_cast<std::size_t>(std::max(0.0, std::ceil(rolls - 1e-9)));
    };
    // The slack of each piece must not make the bound more than a plan that uses it.
    const double held = roll + slack * static_cast<double>(order.size());
    std::size_t bound = up(sum / held);
    std::vector<double> thresholds{0};
    for (const std::size_t piece : order)
        if (pieces[piece] <= held / 2)
            thresholds.push_back(pieces[piece]);
    std::sort(thresholds.begin(), thresholds.end());
    thresholds.erase(std::unique(thresholds.begin(), thresholds.end()), thresholds.end());
    for (const double k : thresholds) {
        std::size_t large = 0, middle = 0;
        double middle_sum = 0, small_sum = 0;
        for (const std::size_t piece : order) {
            const double length = pieces[piece];
            if (length > held - k)
                ++large;
            else if (length > held / 2) {
                ++middle;
                middle_sum += length;
            } else if (length >= k)
                small_sum += length;
        }
        const double room = static_cast<double>(middle) * held - middle_sum;
        bound = std::max(bound, large + middle + up((small_sum - room) / held));
        if (thresholds.size() > 400 && k > thresholds[400])
            break; // a bound from fewer thresholds is a bound too
    }
    return bound;
}

} // namespace

RollPlan pack_rolls(const std::vector<double>& pieces, double roll) {
    RollPlan plan;
    Order order;
    for (std::size_t i = 0; i < pieces.size(); ++i)
        if (pieces[i] > roll + slack)
            plan.too_long.push_back(i);
        else if (pieces[i] > 0)
            order.push_back(i);
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return pieces[a] > pieces[b]; });
    plan.rolls = fit_decreasing(pieces, order, roll, false);
    plan.first_fit = plan.rolls.size();
    plan.least = lower_bound_of(pieces, order, roll);
    if (plan.rolls.size() > plan.least) {
        std::vector<RollCuts> other = fit_decreasing(pieces, order, roll, true);
        if (other.size() < plan.rolls.size())
            plan.rolls = std::move(other);
        while (plan.rolls.size() > plan.least && empty_one(plan.rolls, pieces)) {
        }
    }
    for (RollCuts& one : plan.rolls)
        one.offcut = std::max(0.0, one.offcut);
    return plan;
}

} // namespace coilwright
