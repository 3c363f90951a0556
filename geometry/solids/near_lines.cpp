#include "geometry/solids/near_lines.hpp"

#include "geometry/plan/plan_bounds.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double narrow = 0.35; // sine of the angle between lines that are near each other

struct LineBox {
    Vec3 low, high;
};

LineBox box_of(const RoughLine& line) {
    LineBox box{line.points.front(), line.points.front()};
    for (const Vec3& point : line.points) {
        box.low = box.low.cwiseMin(point);
        box.high = box.high.cwiseMax(point);
    }
    return box;
}

double distance_to(const LineBox& box, const Vec3& point) {
    return (point - point.cwiseMax(box.low).cwiseMin(box.high)).norm();
}

double distance_to(const RoughLine& line, const Vec3& point) {
    double least = (line.points.front() - point).squaredNorm();
    for (std::size_t i = 1; i < line.points.size(); ++i) {
        const Vec3 run = line.points[i] - line.points[i - 1], off = point - line.points[i - 1];
        const double length = run.squaredNorm();
        const double share = length > 0 ? std::clamp(off.dot(run) / length, 0.0, 1.0) : 0;
        least = std::min(least, (off - share * run).squaredNorm());
    }
    return std::sqrt(least);
}

/// How far a point is from the nearer of the places that two lines share; 1e9 if they share none.
double way_to_shared(const RoughLine& a, const RoughLine& b, const Vec3& point) {
    double nearest = 1e9;
    for (const auto& [end, place] :
         {std::pair{a.from, &a.points.front()}, {a.to, &a.points.back()}})
        if (end >= 0 && (end == b.from || end == b.to))
            nearest = std::min(nearest, (*place - point).norm());
    return nearest;
}

} // namespace

std::vector<NearPlace> near_places(const std::vector<const RoughLine*>& lines, double reach) {
    std::vector<LineBox> boxes;
    std::vector<PlanBounds> bounds;
    for (const RoughLine* line : lines) {
        boxes.push_back(box_of(*line));
        const Vec2 off = Vec2::Constant(reach / 2);
        bounds.push_back({boxes.back().low.head<2>() - off, boxes.back().high.head<2>() + off});
    }
    std::vector<std::vector<std::size_t>> others(lines.size());
    for (const auto& [i, j] : meeting_pairs(bounds)) {
        others[static_cast<std::size_t>(i)].push_back(static_cast<std::size_t>(j));
        others[static_cast<std::size_t>(j)].push_back(static_cast<std::size_t>(i));
    }
    std::vector<NearPlace> places;
    for (std::size_t i = 0; i < lines.size(); ++i)
        for (const Vec3& point : lines[i]->points) {
            double nearest = reach;
            for (const std::size_t j : others[i]) {
                if (distance_to(boxes[j], point) >= nearest)
                    continue;
                const double distance = distance_to(*lines[j], point);
                if (distance < narrow * way_to_shared(*lines[i], *lines[j], point))
                    nearest = std::min(nearest, distance);
            }
            if (nearest < reach)
                places.push_back({i, point, nearest});
        }
    return places;
}

} // namespace coilwright
