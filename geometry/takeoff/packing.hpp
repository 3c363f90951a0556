// Cutting tubes from rolls: one-dimensional cutting stock.
#pragma once

#include <cstddef>
#include <vector>

namespace coilwright {

/// What is cut from one roll, by the places of the pieces in the list, and what is left of it.
struct RollCuts {
    std::vector<std::size_t> pieces;
    double offcut = 0; // metres
};

struct RollPlan {
    std::vector<RollCuts> rolls;
    std::size_t first_fit = 0;         // rolls that first-fit decreasing takes
    std::size_t least = 0;             // no plan takes fewer
    std::vector<std::size_t> too_long; // pieces that no roll holds: not in the plan
};

/// Packs pieces (metres, none negative) into rolls of one length: first-fit and best-fit
/// decreasing, then rolls that are emptied into the gaps of the others where that is possible; the
/// best of these. Never more rolls than first-fit decreasing, never fewer than `least`: the greater
/// of the sum over the roll, rounded up, and the number of pieces longer than half of it with what
/// they leave no room for (the bound L2 of Martello & Toth 1990, from memory). Pieces that differ
/// by less than a micrometre from what is left of a roll fit. The same input gives the same plan.
/// Roll 6; pieces 4 3 3 2 -> 2 rolls, bound 2.
RollPlan pack_rolls(const std::vector<double>& pieces, double roll);

} // namespace coilwright
