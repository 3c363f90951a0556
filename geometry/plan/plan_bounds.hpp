// Bounding rectangles in plan, and which of them meet.
#pragma once

#include "geometry/base/vec.hpp"

#include <limits>
#include <utility>
#include <vector>

namespace coilwright {

/// Empty until set.
struct PlanBounds {
    static constexpr double far = std::numeric_limits<double>::infinity();
    Vec2 low{far, far}, high{-far, -far};
    bool empty() const { return low.x() > high.x() || low.y() > high.y(); }
    bool holds(const Vec2& point, double margin = 0) const {
        return low.x() - margin <= point.x() && point.x() <= high.x() + margin &&
               low.y() - margin <= point.y() && point.y() <= high.y() + margin;
    }
    bool meets(const PlanBounds& other) const {
        return low.x() <= other.high.x() && other.low.x() <= high.x() &&
               low.y() <= other.high.y() && other.low.y() <= high.y();
    }
};

/// Every pair i < j of rectangles that are not empty and meet, in ascending order. Work n log n
/// plus the pairs found, through a tree of rectangles halved at the median of the wider side.
std::vector<std::pair<int, int>> meeting_pairs(const std::vector<PlanBounds>& bounds);

} // namespace coilwright
