// What sections and elevations share.
#pragma once

#include "geometry/views/seen_edges.hpp"
#include "geometry/views/upright_views.hpp"

#include <vector>

namespace coilwright {

/// Adds lines as seen edges, as far as they lie above a height.
void add_seen_above(View& view, const std::vector<SeenLine>& lines, double height);

/// A stretch of a line.
struct Stretch {
    double from = 0, to = 0;
};
/// Where a line, from its origin along a unit vector, lies in one region and not in another; within
/// 1 um, stretches under 20 mm may be missed.
std::vector<Stretch> stretches(const PlanExpression& in, const PlanExpression& out, Vec2 origin,
                               Vec2 along, double from, double to);

} // namespace coilwright
