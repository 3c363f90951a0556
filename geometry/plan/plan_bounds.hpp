// Bounding rectangles in plan, and which of them meet.
#pragma once

#include "geometry/base/vec.hpp"

#include <utility>
#include <vector>

namespace coilwright {

/// low.x > high.x where there is nothing to bound.
struct PlanBounds {
    Vec2 low{0, 0}, high{0, 0};
    bool meets(const PlanBounds& other) const {
        return low.x() <= other.high.x() && other.low.x() <= high.x() &&
               low.y() <= other.high.y() && other.low.y() <= high.y();
    }
};

/// Every pair i < j of rectangles that meet, in ascending order. Work n log n plus the pairs found,
/// through a tree of rectangles halved at the median of the wider side.
std::vector<std::pair<int, int>> meeting_pairs(const std::vector<PlanBounds>& bounds);

} // namespace coilwright
