#include "geometry/solids/plan_ways.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/plan/plan_outline.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double nearly_touching = 1e-7; // metres: such crossings are left alone

/// Angle from the way's start to a direction from the centre, along its sweep, in [0, 2 pi).
double turn_to(const PlanWay& way, const Vec2& point) {
    const Vec2 spoke = point - way.centre;
    const double off = std::atan2(spoke.y(), spoke.x()) - way.start;
    const double turn = std::fmod(way.sweep < 0 ? -off : off, 2 * pi);
    return turn < 0 ? turn + 2 * pi : turn;
}

bool whole(const PlanWay& way) {
    return std::abs(way.sweep) > 2 * pi - 1e-12;
}

} // namespace

Vec2 PlanWay::at(double share) const {
    if (!circle)
        return from + share * (to - from);
    const double angle = start + share * sweep;
    return centre + radius * Vec2(std::cos(angle), std::sin(angle));
}

double PlanWay::length() const {
    return circle ? radius * std::abs(sweep) : (to - from).norm();
}

PlanWay straight_way(const Vec2& from, const Vec2& to) {
    PlanWay way;
    way.from = from;
    way.to = to;
    return way;
}

PlanWay arc_way(const Vec2& centre, double radius, const Vec2& from, const Vec2& to, bool back) {
    const Vec2 a = from - centre, b = to - centre;
    double turn = std::atan2(cross(a, b), a.dot(b));
    if (back ? turn > 0 : turn < 0)
        turn += back ? -2 * pi : 2 * pi;
    PlanWay way;
    way.circle = true;
    way.centre = centre;
    way.radius = radius;
    way.start = std::atan2(a.y(), a.x());
    way.sweep = turn;
    return way;
}

PlanWay circle_way(const Vec2& centre, double radius, bool back) {
    PlanWay way;
    way.circle = true;
    way.centre = centre;
    way.radius = radius;
    way.sweep = back ? -2 * pi : 2 * pi;
    return way;
}

PlanWay reversed(const PlanWay& way) {
    PlanWay other = way;
    std::swap(other.from, other.to);
    other.start += other.sweep;
    other.sweep = -other.sweep;
    return other;
}

PlanWay part_of(const PlanWay& way, double from, double to) {
    PlanWay part = way;
    part.from = way.at(from);
    part.to = way.at(to);
    part.start += from * way.sweep;
    part.sweep *= to - from;
    return part;
}

double share_of(const PlanWay& way, const Vec2& point) {
    if (way.circle)
        return turn_to(way, point) / std::abs(way.sweep);
    const Vec2 run = way.to - way.from;
    return (point - way.from).dot(run) / run.squaredNorm();
}

bool lies_on(const PlanWay& way, const Vec2& point, double reach) {
    if (way.circle) {
        if (std::abs((point - way.centre).norm() - way.radius) >= reach)
            return false;
        const double along = turn_to(way, point) * way.radius;
        return whole(way) || (along > reach && along < way.length() - reach);
    }
    const Vec2 run = way.to - way.from;
    const double length = run.norm();
    const double along = (point - way.from).dot(run) / length;
    return std::abs(cross(run, point - way.from)) < reach * length && along > reach &&
           along < length - reach;
}

PlanBounds bounds_of(const PlanWay& way, double margin) {
    const Vec2 off = Vec2::Constant(margin);
    if (way.circle) {
        const Vec2 reach = off + Vec2::Constant(way.radius);
        return {way.centre - reach, way.centre + reach};
    }
    return {way.from.cwiseMin(way.to) - off, way.from.cwiseMax(way.to) + off};
}

std::vector<Vec2> crossings(const PlanWay& a, const PlanWay& b) {
    if (!a.circle && b.circle)
        return crossings(b, a);
    std::vector<Vec2> found;
    if (a.circle && b.circle) {
        const Vec2 apart = b.centre - a.centre;
        const double d = apart.norm(), r = a.radius, s = b.radius;
        if (d < nearly_touching || std::min(r + s - d, d - std::abs(r - s)) < nearly_touching)
            return found;
        const double along = (d * d + (r - s) * (r + s)) / (2 * d);
        const double height = std::sqrt(std::max(0.0, r * r - along * along));
        for (const double side : {-1.0, 1.0})
            found.emplace_back(a.centre + along / d * apart +
                               side * height / d * turned_left(apart));
    } else if (a.circle) {
        const Vec2 run = (b.to - b.from).normalized();
        const Vec2 foot = b.from + run.dot(a.centre - b.from) * run;
        const double off = (foot - a.centre).norm();
        if (a.radius - off < nearly_touching)
            return found;
        const double half = std::sqrt(a.radius * a.radius - off * off);
        found = {foot - half * run, foot + half * run};
    } else {
        const Vec2 u = a.to - a.from, v = b.to - b.from;
        const double turn = cross(u, v);
        if (std::abs(turn) > 1e-9 * u.norm() * v.norm())
            found.emplace_back(a.from + cross(b.from - a.from, v) / turn * u);
    }
    return found;
}

namespace {

const Vec2 ray(0.86217, std::sqrt(1 - 0.86217 * 0.86217));
constexpr double row = 0.1; // metres

double along_ray(const Vec2& v) {
    return ray.dot(v);
}
double across_ray(const Vec2& v) {
    return cross(ray, v);
}

int crossed_by_ray(const PlanWay& way, const Vec2& point) {
    if (!way.circle) {
        const double a = across_ray(way.from - point), b = across_ray(way.to - point);
        if ((a > 0) == (b > 0))
            return 0;
        const double share = a / (a - b);
        return along_ray(way.from + share * (way.to - way.from) - point) > 0 ? 1 : 0;
    }
    const double off = across_ray(point - way.centre);
    if (std::abs(off) >= way.radius)
        return 0;
    const double half = std::sqrt(way.radius * way.radius - off * off);
    int crossed = 0;
    for (const double along : {-half, half}) {
        const Vec2 at = way.centre + along * ray + off * turned_left(ray);
        crossed +=
            along_ray(at - point) > 0 && (whole(way) || turn_to(way, at) < std::abs(way.sweep));
    }
    return crossed;
}

} // namespace

WayIndex::WayIndex(std::vector<PlanWay> ways) : ways_(std::move(ways)) {
    const auto range = [](const PlanWay& way) {
        if (way.circle) {
            const double middle = across_ray(way.centre);
            return std::pair{middle - way.radius, middle + way.radius};
        }
        return std::pair(std::minmax({across_ray(way.from), across_ray(way.to)}));
    };
    double high = low_;
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        const auto [from, to] = range(ways_[i]);
        low_ = i == 0 ? from : std::min(low_, from);
        high = i == 0 ? to : std::max(high, to);
    }
    rows_.resize(static_cast<std::size_t>((high - low_) / row) + 1);
    for (std::size_t i = 0; i < ways_.size(); ++i) {
        const auto [from, to] = range(ways_[i]);
        for (auto k = static_cast<std::size_t>((from - low_) / row);
             k <= static_cast<std::size_t>((to - low_) / row); ++k)
            rows_[k].push_back(static_cast<int>(i));
    }
}

bool WayIndex::holds(const Vec2& point) const {
    const double place = (across_ray(point) - low_) / row;
    if (place < 0 || place >= static_cast<double>(rows_.size()))
        return false;
    int crossed = 0;
    for (const int way : rows_[static_cast<std::size_t>(place)])
        crossed += crossed_by_ray(ways_[static_cast<std::size_t>(way)], point);
    return crossed % 2 != 0;
}

} // namespace coilwright
