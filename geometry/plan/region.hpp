// Plan regions bounded by arcs and segments: the wall of a course, a floor, a footprint.
// Frame: x east, y north, metres.
#pragma once

#include "geometry/base/vec.hpp"

#include <functional>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace coilwright {

struct Disc {
    Vec2 centre{0, 0};
    double radius = 0;
};

/// A rectangle in any direction: `from` to `to` along a unit vector from an origin, `low` to `high`
/// across it (to the left of the axis, anticlockwise).
struct Box {
    Vec2 origin{0, 0};
    Vec2 axis{1, 0};
    double from = 0, to = 0, low = 0, high = 0;
};

using Shape = std::variant<Disc, Box>;

/// A region as set algebra over shapes: the union over its terms of one shape less others. A ring is
/// the outer disc less the inner one. Indices into `shapes`.
struct PlanTerm {
    std::string element; // id of what it stands for
    int solid = 0;
    std::vector<int> less;
};
struct PlanExpression {
    std::vector<Shape> shapes;
    std::vector<PlanTerm> terms;
};

/// One piece of a region's boundary, walked with the region on its left.
struct BoundaryEdge {
    int shape = 0;        // whose boundary it lies on
    Vec2 from{0, 0}, to{0, 0};
    double bulge = 0;     // tan(sweep / 4): 0 straight, positive anticlockwise, a half circle 1
};
struct BoundaryLoop {
    std::vector<BoundaryEdge> edges; // closed, outer loops anticlockwise, holes clockwise
    double area = 0;                 // signed
};
struct Region {
    std::vector<BoundaryLoop> loops; // largest area first, then by their first point; no empty loop
    double area = 0;
};

/// The region in double arithmetic: every shape's boundary is split at its crossings with the
/// others, each piece is kept if the region lies on one side of it only, and areas are integrated by
/// Green's theorem. Boundary order n log n in the number of shapes while few overlap. Nothing where
/// it cannot decide: a crossing within `near` of a tangency, an end or another crossing, or coinciding
/// boundaries that are not the same curve.
std::optional<Region> fast_region(const PlanExpression& expression, double near = 1e-7);

/// Whether a point lies in the region; a point within 1e-9 of a boundary may go either way.
bool contains(const PlanExpression& expression, const Vec2& point);

/// Answers what fast_region cannot decide; handed in so that the plan needs no exact arithmetic.
using DecideRegion = std::function<Region(const PlanExpression&)>;

/// fast_region, or `decide` where that gives up.
Region region_of(const PlanExpression& expression, const DecideRegion& decide);

/// Length of the boundary, metres.
double perimeter(const Region& region);

} // namespace coilwright
