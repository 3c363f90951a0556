#include "geometry/plan/stacked_sides.hpp"

#include <algorithm>

namespace coilwright {

void StackedSides::gather(int curve, const Vec2& point) {
    members_.assign(1, {curve, true});
    if (crossings_.shared.empty())
        return;
    const auto [first, last] = shared_lines_of(crossings_, curve);
    for (std::size_t i = first; i < last; ++i) {
        const SharedLine& line = crossings_.shared[i];
        const PlanCurve& other = outline_.curves[static_cast<std::size_t>(line.other)];
        const double along = other.direction.dot(point - other.start);
        if (along > 0 && along < other.length && formula_.uses(other.shape) &&
            outline_.bounds_of(other).holds(point))
            members_.push_back({line.other, line.same_direction});
    }
}

void StackedSides::add_shapes(std::vector<int>& shapes) const {
    for (const Member& member : members_) {
        const int own = outline_.curves[static_cast<std::size_t>(member.curve)].shape;
        if (std::find(shapes.begin(), shapes.end(), own) == shapes.end())
            shapes.push_back(own);
    }
}

void StackedSides::set_sides(std::vector<ShapeSide>& sides, bool left) const {
    for (const Member& member : members_)
        sides[shape(member)] = side(member, left);
}

int StackedSides::first() const {
    return std::min_element(members_.begin(), members_.end(),
                            [](const Member& a, const Member& b) { return a.curve < b.curve; })
        ->curve;
}

std::vector<int> StackedSides::bounding(std::span<const int> near,
                                        std::vector<ShapeSide>& sides) const {
    std::vector<int> curves;
    for (const Member& member : members_)
        if (alone() || decides(member, near, sides))
            curves.push_back(member.curve);
    if (curves.empty())
        for (const Member& member : members_)
            curves.push_back(member.curve);
    std::sort(curves.begin(), curves.end(), [&](int a, int b) {
        const double one = outline_.curves[static_cast<std::size_t>(a)].length;
        const double two = outline_.curves[static_cast<std::size_t>(b)].length;
        return one != two ? one > two : a < b;
    });
    return curves;
}

/// Whether the formula on one of the two sides changes with this shape alone.
bool StackedSides::decides(const Member& member, std::span<const int> near,
                           std::vector<ShapeSide>& sides) const {
    for (const bool left : {true, false}) {
        set_sides(sides, left);
        const ShapeSide value = formula_.value(near, sides);
        sides[shape(member)] = side(member, !left);
        if (formula_.value(near, sides) != value)
            return true;
    }
    return false;
}

} // namespace coilwright
