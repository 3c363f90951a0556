#include "geometry/plan/box_overlap.hpp"

#include "geometry/plan/wall_form.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace coilwright {

bool overlap(const Box& a, const Box& b) {
    const auto corners = [](const Box& box) {
        const Vec2 left(-box.axis.y(), box.axis.x());
        std::vector<Vec2> points;
        for (const double x : {box.from, box.to})
            for (const double y : {box.low, box.high})
                points.push_back(box.origin + x * box.axis + y * left);
        return points;
    };
    const std::vector<Vec2> of_a = corners(a), of_b = corners(b);
    for (const Vec2& axis :
         {a.axis, Vec2(-a.axis.y(), a.axis.x()), b.axis, Vec2(-b.axis.y(), b.axis.x())}) {
        const auto range = [&](const std::vector<Vec2>& points) {
            std::pair<double, double> result{points[0].dot(axis), points[0].dot(axis)};
            for (const Vec2& point : points) {
                result.first = std::min(result.first, point.dot(axis));
                result.second = std::max(result.second, point.dot(axis));
            }
            return result;
        };
        const auto [low_a, high_a] = range(of_a);
        const auto [low_b, high_b] = range(of_b);
        if (high_a <= low_b + height_tie || high_b <= low_a + height_tie)
            return false;
    }
    return true;
}

bool overlap(const Box& box, const Vec2& centre, double radius) {
    const Vec2 off = centre - box.origin;
    const double x = off.dot(box.axis);
    const double y = box.axis.x() * off.y() - box.axis.y() * off.x();
    const double dx = x - std::clamp(x, box.from, box.to);
    const double dy = y - std::clamp(y, box.low, box.high);
    return dx * dx + dy * dy < (radius - height_tie) * (radius - height_tie);
}

} // namespace coilwright
