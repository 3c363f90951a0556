// Straight and circular ways in plan.
#pragma once

#include "geometry/plan/plan_bounds.hpp"

#include <vector>

namespace coilwright {

struct PlanWay {
    bool circle = false;
    Vec2 from{0, 0}, to{0, 0}; // of a straight one
    Vec2 centre{0, 0};
    double radius = 0, start = 0, sweep = 0; // of an arc: radians, positive anticlockwise

    Vec2 at(double share) const;
    double length() const;
};

PlanWay straight_way(const Vec2& from, const Vec2& to);
/// From one point of a circle to another, anticlockwise or `back`, less than once round.
PlanWay arc_way(const Vec2& centre, double radius, const Vec2& from, const Vec2& to, bool back);
/// Once round, from the east.
PlanWay circle_way(const Vec2& centre, double radius, bool back);

PlanWay reversed(const PlanWay& way);
/// Between two shares of the way; a whole circle may be left beyond 1.
PlanWay part_of(const PlanWay& way, double from, double to);

/// Share of the way at a point on it; a whole circle's in [0, 1).
double share_of(const PlanWay& way, const Vec2& point);
/// Within `reach` of the way, and further than that from its ends.
bool lies_on(const PlanWay& way, const Vec2& point, double reach);
/// Bounds of a way, of the whole circle of an arc, widened by a margin.
PlanBounds bounds_of(const PlanWay& way, double margin);
/// Where the whole lines and circles of two ways cross; none where they touch or are one.
std::vector<Vec2> crossings(const PlanWay& a, const PlanWay& b);
/// Closed ways around regions, for asking which points lie inside: an odd number of them crossed by
/// a ray in a direction that no building has for its own. Asking costs the ways that lie in line.
class WayIndex {
public:
    explicit WayIndex(std::vector<PlanWay> ways);
    bool holds(const Vec2& point) const;

private:
    std::vector<PlanWay> ways_;
    double low_ = 0;
    std::vector<std::vector<int>> rows_; // ways by where they lie across the ray
};

} // namespace coilwright
