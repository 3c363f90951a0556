// Sides of several boxes that run along one line past one point.
#pragma once

#include "geometry/plan/plan_formula.hpp"
#include "geometry/plan/region_crossings.hpp"

namespace coilwright {

class StackedSides {
public:
    StackedSides(const PlanOutline& outline, const Crossings& crossings, const PlanFormula& formula)
        : outline_(outline), crossings_(crossings), formula_(formula) {}

    /// A curve and all others that lie on its line and pass the point on it, as far as they can
    /// matter there. Precondition: the curve can.
    void gather(int curve, const Vec2& point);

    /// Adds their shapes to a list that may hold some already.
    void add_shapes(std::vector<int>& shapes) const;

    /// Sets the sides of their shapes to those of a point just left of the curve, or right of it.
    void set_sides(std::vector<ShapeSide>& sides, bool left) const;

    bool alone() const { return members_.size() == 1; }
    /// The first of them by index.
    int first() const;

    /// Those that the edge may be said to lie on, of which the region there depends on one alone;
    /// the longest first, equals by index; all where only several together decide. `sides` holds
    /// those of all other shapes `near`.
    std::vector<int> bounding(std::span<const int> near, std::vector<ShapeSide>& sides) const;

private:
    struct Member {
        int curve;
        bool same_direction;
    };
    bool decides(const Member& member, std::span<const int> near,
                 std::vector<ShapeSide>& sides) const;
    ShapeSide side(const Member& member, bool left) const {
        return member.same_direction == left ? ShapeSide::in : ShapeSide::out;
    }
    std::size_t shape(const Member& member) const {
        return static_cast<std::size_t>(
            outline_.curves[static_cast<std::size_t>(member.curve)].shape);
    }

    const PlanOutline& outline_;
    const Crossings& crossings_;
    const PlanFormula& formula_;
    std::vector<Member> members_;
};

} // namespace coilwright
