// Which pieces of the shapes' curves bound a region.
#pragma once

#include "geometry/plan/plan_formula.hpp"
#include "geometry/plan/region_crossings.hpp"

#include <optional>

namespace coilwright {

/// A piece of a curve between two vertices, walked so that the region lies on its left. A whole
/// circle without vertices has -1 for both; with one vertex, that one twice.
struct BoundaryPiece {
    int curve = 0;
    bool anticlockwise = true; // of a piece of a circle
    int from = -1, to = -1;
    std::vector<int>
        also; // other sides on its line that it may be said to lie on, see StackedSides
};

/// False if a doubt can change the region's boundary: the region there depends on both curves that
/// touch, or on more than two curves that meet, for some combination of sides of the shapes whose
/// boundaries pass there.
bool doubts_are_idle(const PlanExpression& expression, const PlanOutline& outline,
                     const Crossings& crossings, const PlanFormula& formula);

/// The pieces with the region on one side only. Nothing where the side of a piece cannot be told.
std::optional<std::vector<BoundaryPiece>> boundary_pieces(const PlanExpression& expression,
                                                          const PlanOutline& outline,
                                                          const Crossings& crossings,
                                                          const PlanFormula& formula);

} // namespace coilwright
