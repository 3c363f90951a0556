#include "geometry/drawing/straight_shapes.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace coilwright {
namespace {

Vec2 left_of(Vec2 ahead) {
    return {-ahead.y(), ahead.x()};
}

/// A circle that an end of a run butts against.
struct Stop {
    Vec2 centre{0, 0};
    double radius = 0;
};

std::optional<Stop> stop_at(const BuildingForm& building, const std::string& by, Vec2 end) {
    if (const DomeForm* dome = find_dome(building, by))
        return Stop{dome->at, (end - dome->at).norm()};
    return std::nullopt;
}

/// Where a line through `point` along `ahead` meets the circle, the crossing nearer to the point;
/// the point itself where it does not.
Vec2 meet(const Stop& stop, Vec2 point, Vec2 ahead) {
    const Vec2 off = point - stop.centre;
    const double b = off.dot(ahead), c = off.squaredNorm() - stop.radius * stop.radius;
    const double square = b * b - c;
    if (square < 0)
        return point;
    const double root = std::sqrt(square), near = -b - root, far = -b + root;
    return point + ahead * (std::abs(near) < std::abs(far) ? near : far);
}

/// The bulge of the arc on a circle from one of its points to another, the shorter way.
double bulge_between(const Stop& stop, Vec2 from, Vec2 to) {
    const Vec2 a = from - stop.centre, b = to - stop.centre;
    const double cross = a.x() * b.y() - a.y() * b.x();
    return std::tan(std::atan2(cross, a.dot(b)) / 4);
}

/// How wide to draw a run.
double drawn_width(const BuildingForm& building, const Course& course, const Straight& straight) {
    for (const ButtressForm& pier : building.buttresses)
        if (pier.id == straight.of)
            return pier_tubes(pier, course.number).front().width;
    const TunnelForm* tunnel = find_tunnel(building, straight.of);
    if (!tunnel || straight.part != StraightPart::crown)
        return straight.width;
    const auto count =
        std::count_if(course.straights.begin(), course.straights.end(), [&](const Straight& other) {
            return other.of == straight.of && other.part == StraightPart::crown;
        });
    return 2 * outer_half_width(*tunnel, course.middle) / static_cast<double>(count);
}

} // namespace

std::vector<StraightShape> straight_shapes(const BuildingForm& building, const Course& course,
                                           const Straight& straight) {
    std::vector<StraightShape> shapes;
    const Vec2 ahead = (straight.end - straight.start).normalized();
    const double width = drawn_width(building, course, straight);
    const Vec2 aside = left_of(ahead) * (width / 2);
    const auto start_stop = stop_at(building, straight.start_by, straight.start);
    const auto end_stop = stop_at(building, straight.end_by, straight.end);
    double at = 0;
    for (const LaidTube& tube : straight.tubes) {
        StraightShape shape;
        shape.tube = &tube;
        shape.width = width;
        shape.start = straight.start + ahead * at;
        at += tube.length;
        shape.end = straight.start + ahead * at;
        const bool first = &tube == &straight.tubes.front();
        const bool last = &tube == &straight.tubes.back();
        const auto corner = [&](Vec2 point, const std::optional<Stop>& stop, bool stops) {
            return stops && stop ? meet(*stop, point, ahead) : point;
        };
        const Vec2 start_left = corner(shape.start + aside, start_stop, first);
        const Vec2 start_right = corner(shape.start - aside, start_stop, first);
        const Vec2 end_left = corner(shape.end + aside, end_stop, last);
        const Vec2 end_right = corner(shape.end - aside, end_stop, last);
        shape.outline.from = start_right;
        shape.outline.edges = {
            {end_right, 0},
            {end_left, last && end_stop ? bulge_between(*end_stop, end_right, end_left) : 0},
            {start_left, 0},
            {start_right,
             first && start_stop ? bulge_between(*start_stop, start_left, start_right) : 0}};
        shapes.push_back(std::move(shape));
    }
    return shapes;
}

std::vector<Segment> clipped(const Segment& segment, Vec2 low, Vec2 high) {
    const Vec2 way = segment.to - segment.from;
    double from = 0, to = 1;
    for (const int axis : {0, 1}) {
        const double start = segment.from[axis], step = way[axis];
        if (std::abs(step) < 1e-15) {
            if (start < low[axis] || start > high[axis])
                return {};
            continue;
        }
        const double a = (low[axis] - start) / step, b = (high[axis] - start) / step;
        from = std::max(from, std::min(a, b));
        to = std::min(to, std::max(a, b));
    }
    if (from >= to)
        return {};
    return {{segment.from + way * from, segment.from + way * to}};
}

std::vector<std::pair<double, double>> clipped_arc(Vec2 centre, double radius, double start,
                                                   double end, Vec2 low, Vec2 high) {
    std::vector<double> cuts{start, end};
    const auto add = [&](double angle) {
        for (angle += 2 * pi * std::ceil((start - angle) / (2 * pi)); angle < end; angle += 2 * pi)
            cuts.push_back(angle);
    };
    for (const double x : {low.x(), high.x()})
        if (const double part = (x - centre.x()) / radius; std::abs(part) < 1) {
            add(std::acos(part));
            add(-std::acos(part));
        }
    for (const double y : {low.y(), high.y()})
        if (const double part = (y - centre.y()) / radius; std::abs(part) < 1) {
            add(std::asin(part));
            add(pi - std::asin(part));
        }
    std::sort(cuts.begin(), cuts.end());
    std::vector<std::pair<double, double>> kept;
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        const double middle = (cuts[i] + cuts[i + 1]) / 2;
        const Vec2 point = centre + radius * Vec2(std::cos(middle), std::sin(middle));
        if (cuts[i + 1] - cuts[i] < 1e-12 || (point.array() < low.array()).any() ||
            (point.array() > high.array()).any())
            continue;
        if (!kept.empty() && kept.back().second == cuts[i])
            kept.back().second = cuts[i + 1];
        else
            kept.emplace_back(cuts[i], cuts[i + 1]);
    }
    return kept;
}

} // namespace coilwright
