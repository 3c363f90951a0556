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

/// A region as set algebra over shapes: the union over its terms of one shape less others. A ring
/// is the outer disc less the inner one. Indices into `shapes`.
struct PlanTerm {
    std::string element; // id of what it stands for
    int solid = 0;
    std::vector<int> less;
};
struct PlanExpression {
    std::vector<Shape> shapes;
    std::vector<PlanTerm> terms;
};

/// One piece of a region's boundary, walked with the region on its left. A whole circle is two half
/// circles from its westmost point; an arc of more than a half circle is one edge unless its ends
/// come within 1/1000 of the radius of each other. No two edges that follow each other lie on the
/// same curve but for these. Where sides of several shapes run along one line, edges are as few and
/// as long as can be; each is that of the longest side that bounds the region there, of equals the
/// first.
struct BoundaryEdge {
    int shape = 0; // whose boundary it lies on; of several on one line see above
    Vec2 from{0, 0}, to{0, 0};
    double bulge = 0; // tan(sweep / 4): 0 straight, positive anticlockwise, a half circle 1
};
/// Starts at its westmost corner, the southmost of those, and passes no point twice: where a region
/// touches itself in a point, several loops do (which way round is left open).
struct BoundaryLoop {
    std::vector<BoundaryEdge> edges; // closed, outer loops anticlockwise, holes clockwise
    double area = 0;                 // signed; "largest" below is by its size
};
struct Region {
    std::vector<BoundaryLoop> loops; // largest area first, then by their first point; no empty loop
    double area = 0;
    bool decided = true; // false where no arithmetic could tell: then there is no loop
};

/// Points and curves of a plan that are nearer to each other are one, metres.
inline constexpr double plan_weld = 1e-9;

/// The region in double arithmetic: every shape's boundary is split at its crossings with the
/// others, each piece is kept if the region lies on one side of it only, and areas are integrated
/// by Green's theorem. Work n log n in the number of shapes while few overlap. A disc of radius 2
/// less one of 1 -> area 9.424778. Curves that coincide within plan_weld are one: the same disc or
/// box listed twice, sides of boxes on one line, corners on other curves. Shapes no wider than
/// plan_weld hold nothing. Nothing where doubles are no judge and it matters: a crossing within
/// `near` of a tangency, an end or another crossing, curves that run within `near` of each other
/// and are not one; and where the expression is not sound (a number that is not finite or is beyond
/// 100 km, an axis that is no unit vector, an index that names no shape).
std::optional<Region> fast_region(const PlanExpression& expression, double near = 1e-7);

/// Whether a point lies in the region; a point within 1e-9 of a boundary may go either way.
/// Precondition: indices name shapes.
bool contains(const PlanExpression& expression, const Vec2& point);

/// Answers what fast_region cannot decide; handed in so that the plan needs no exact arithmetic.
using DecideRegion = std::function<Region(const PlanExpression&)>;

/// fast_region; where that gives up, `decide` for those parts of the plan that stand clear of the
/// others and need it. Undecided where there is no `decide` or the expression is not sound.
Region region_of(const PlanExpression& expression, const DecideRegion& decide);

/// The circle of an edge, and whether it runs clockwise on it; none for a straight one.
struct EdgeArc {
    Vec2 centre{0, 0};
    double radius = 0;
    bool clockwise = false;
};
std::optional<EdgeArc> arc_of(const BoundaryEdge& edge);

/// Length of one edge, and of the whole boundary, metres.
double length_of(const BoundaryEdge& edge);
double perimeter(const Region& region);

} // namespace coilwright
