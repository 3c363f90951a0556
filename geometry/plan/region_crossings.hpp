// Where the curves of a plan expression cross, and the places where doubles are no judge of it.
#pragma once

#include "geometry/plan/plan_outline.hpp"

#include <vector>

namespace coilwright {

/// A vertex as met on one curve. `along` grows along the curve: metres on a side; on a circle a
/// number in [0, 4) that grows with the angle.
struct CurveNode {
    int curve = 0;
    double along = 0;
    int vertex = 0;
};

/// A side that lies on another side's line (within plan_weld) for some stretch.
struct SharedLine {
    int curve = 0, other = 0;
    bool same_direction = true;
};

/// A place where two curves touch, or nearly, or where more than two meet, or nearly: whatever
/// happens there happens within `reach` of it.
struct Doubt {
    Vec2 at{0, 0};
    double reach = 0;
    int curve = 0,
        other = 0;         // for a place where many meet: the curve that it was noticed on, twice
    bool touching = false; // these two, along a stretch
};

struct Crossings {
    std::vector<Vec2> vertices;
    std::vector<CurveNode> nodes;   // by curve, then along it; each vertex once on a curve
    std::vector<int> first_node;    // per curve, and one more
    std::vector<SharedLine> shared; // by curve; each pair from both sides
    std::vector<Doubt> doubts;
};

/// Vertices are crossings and the corners of boxes; those within plan_weld of each other along a
/// curve are one. Those within `near` and not one, crossings within `near` of a tangency or of the
/// end of a side, and sides that run within `near` of each other and not on one line are doubts.
Crossings find_crossings(const PlanOutline& outline, double near);

/// The piece of a curve's shared lines in Crossings::shared: [first, last).
std::pair<std::size_t, std::size_t> shared_lines_of(const Crossings& crossings, int curve);

} // namespace coilwright
