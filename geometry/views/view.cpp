#include "geometry/views/view.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

void add_segment(View& view, LineRole role, Vec2 from, Vec2 to) {
    ViewPath path;
    path.role = role;
    path.path.from = from;
    path.path.edges.push_back({to, 0});
    view.paths.push_back(std::move(path));
}

void add_whole_circle(View& view, LineRole role, Vec2 centre, double radius) {
    ViewPath path;
    path.role = role;
    const Vec2 arm(radius, 0);
    path.path.from = centre - arm;
    path.path.edges.push_back({centre + arm, 1});
    path.path.edges.push_back({centre - arm, 1});
    view.paths.push_back(std::move(path));
}

void add_region(View& view, const Region& region, LineRole role, bool hatched) {
    ViewHatch hatch;
    for (const BoundaryLoop& loop : region.loops) {
        Outline outline;
        outline.from = loop.edges.front().from;
        for (const BoundaryEdge& edge : loop.edges)
            outline.edges.push_back({edge.to, edge.bulge});
        hatch.loops.push_back(outline);
        view.paths.push_back({role, std::move(outline)});
    }
    if (hatched && !hatch.loops.empty())
        view.hatches.push_back(std::move(hatch));
}

void add_pole(View& view, Vec2 at, double arm) {
    for (const Vec2& one : {Vec2(arm, 0), Vec2(0, arm)})
        add_segment(view, LineRole::axis, at - one, at + one);
}

double ViewExtent::farthest(Vec2 direction) const {
    double most = -std::numeric_limits<double>::infinity();
    for (const double x : {low.x(), high.x()})
        for (const double y : {low.y(), high.y()})
            most = std::max(most, direction.dot(Vec2(x, y)));
    return most;
}

namespace {

void grow(ViewExtent& extent, bool& any, Vec2 point) {
    extent.low = any ? Vec2(extent.low.cwiseMin(point)) : point;
    extent.high = any ? Vec2(extent.high.cwiseMax(point)) : point;
    any = true;
}

} // namespace

ViewExtent extent_of(const View& view) {
    ViewExtent extent;
    bool any = false;
    for (const ViewPath& path : view.paths) {
        Vec2 from = path.path.from;
        grow(extent, any, from);
        for (const OutlineEdge& edge : path.path.edges) {
            grow(extent, any, edge.to);
            if (const auto arc = arc_of(BoundaryEdge{0, from, edge.to, edge.bulge})) {
                const Vec2 first = (edge.bulge > 0 ? from : edge.to) - arc->centre;
                const double start = std::atan2(first.y(), first.x());
                const double end = start + 4 * std::atan(std::abs(edge.bulge));
                for (double k = std::ceil(start / (pi / 2)); k * pi / 2 <= end; ++k) {
                    const double angle = k * pi / 2;
                    grow(extent, any,
                         arc->centre + arc->radius * Vec2(std::cos(angle), std::sin(angle)));
                }
            }
            from = edge.to;
        }
    }
    return extent;
}

int rows_beside(const View& view, Vec2 left) {
    int rows = 0;
    for (const ViewDimension& dimension : view.dimensions) {
        const Vec2 its_left(-dimension.along.y(), dimension.along.x());
        if (dimension.row >= 0 && its_left.dot(left) > 0.99)
            rows = std::max(rows, dimension.row + 1);
    }
    return rows;
}

} // namespace coilwright
