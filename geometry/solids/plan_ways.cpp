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

/// Angle under which a way's ends are seen, and once more round where the point lies between an
/// arc, no more than a half circle, and its chord.
double seen_from(const PlanWay& way, const Vec2& point) {
    const Vec2 a = way.at(0) - point, b = way.at(1) - point;
    double angle = std::atan2(cross(a, b), a.dot(b));
    if (way.circle) {
        const bool in_circle = (point - way.centre).squaredNorm() < way.radius * way.radius;
        const double side = cross(b - a, -a); // left of the chord
        if (in_circle && (way.sweep > 0 ? side < 0 : side > 0))
            angle += way.sweep > 0 ? 2 * pi : -2 * pi;
    }
    return angle;
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

double winding_number(const std::vector<PlanWay>& ways, const Vec2& point) {
    double angle = 0;
    for (const PlanWay& way : ways) {
        const int parts = way.circle ? 1 + static_cast<int>(std::abs(way.sweep) / (0.99 * pi)) : 1;
        for (int i = 0; i < parts; ++i)
            angle += seen_from(parts == 1 ? way
                                          : part_of(way, static_cast<double>(i) / parts,
                                                    static_cast<double>(i + 1) / parts),
                               point);
    }
    return angle / (2 * pi);
}

} // namespace coilwright
