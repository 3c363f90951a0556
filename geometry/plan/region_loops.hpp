// Boundary pieces put together into the loops of a region, in one order and form whichever
// arithmetic found them.
#pragma once

#include "geometry/plan/region_pieces.hpp"

namespace coilwright {

/// A piece between two points. On a circle one place for both ends is the whole circle.
struct LoopPiece {
    int curve = 0;
    bool anticlockwise = true; // of a piece of a circle
    Vec2 from{0, 0}, to{0, 0};
    std::vector<int> also; // see BoundaryPiece
};
using LoopPieces = std::vector<LoopPiece>; // closed

/// Where several pieces start at one vertex a loop goes on along the first that lies clockwise of
/// the one it came by, about a part that hangs together inside, and is cut where it comes back to a
/// vertex: no loop passes a vertex twice. Nothing where pieces do not close or leave a vertex in
/// one direction.
std::optional<std::vector<LoopPieces>> walk_loops(const PlanOutline& outline,
                                                  const Crossings& crossings,
                                                  const std::vector<BoundaryPiece>& pieces);

/// Pieces that follow each other and may be said to lie on one curve are joined, loops are started
/// and ordered as region.hpp says, areas integrated; loops below least_loop_area are dropped.
Region make_region(const PlanOutline& outline, const std::vector<LoopPieces>& loops);

/// Puts loops into the order that region.hpp gives them and adds up their areas.
Region region_of_loops(std::vector<BoundaryLoop> loops);

/// A smaller loop is what plan_weld makes of touching shapes, square metres.
inline constexpr double least_loop_area = 1e-14;

} // namespace coilwright
