// The curves that bound the shapes of a plan expression. Shared by the region in doubles and the
// exact one, so that both see the same curves as one.
#pragma once

#include "geometry/plan/plan_bounds.hpp"
#include "geometry/plan/region.hpp"

namespace coilwright {

/// A circle, or one side of a box from corner to corner; walked anticlockwise about its shape,
/// which lies on the left.
struct PlanCurve {
    int shape = 0;
    bool circle = false;
    Vec2 start{0, 0};                       // a side's first corner; a circle's centre
    Vec2 direction{1, 0};                   // of a side
    double length = 0;                      // of a side; a circle's radius
    int start_corner = -1, end_corner = -1; // of a side, indices into `corners`
    Vec2 at(double along) const { return start + along * direction; }
};

/// The curves of all shapes that bound anything. Of shapes that coincide only the first has curves;
/// a shape no wider than plan_weld has none and holds nothing.
struct PlanOutline {
    std::vector<int> same_as;     // per shape: the first shape that coincides with it, or itself
    std::vector<int> first_curve; // per shape, and one more: its curves are [i], ... before [i + 1]
    std::vector<PlanCurve> curves;
    std::vector<Vec2> corners;
    std::vector<PlanBounds> bounds;              // per shape: of where it can bound anything
    std::vector<std::pair<int, int>> neighbours; // i < j: shapes that meet, and their bounds
    const PlanBounds& bounds_of(const PlanCurve& curve) const {
        return bounds[static_cast<std::size_t>(curve.shape)];
    }
    bool has_curves(int shape) const {
        return first_curve[static_cast<std::size_t>(shape)] !=
               first_curve[static_cast<std::size_t>(shape) + 1];
    }
};

/// Bounds are widened by `margin`; those of a shape that is only taken away are cut down to those
/// of what it is taken from. Elsewhere it is not to be judged: its neighbours there are not known.
/// Precondition: is_sound.
PlanOutline make_outline(const PlanExpression& expression, double margin);

/// Every number of every shape is finite and below 100 km, so that rounding stays far below
/// plan_weld; axes are unit vectors; every index of a term names a shape.
bool is_sound(const PlanExpression& expression);

/// Distance from a shape's boundary, negative inside, metres.
double distance_outside(const Shape& shape, const Vec2& point);

inline double cross(const Vec2& a, const Vec2& b) {
    return a.x() * b.y() - a.y() * b.x();
}
inline Vec2 turned_left(const Vec2& v) {
    return {-v.y(), v.x()};
}

} // namespace coilwright
