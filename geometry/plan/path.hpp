// Paths laid in plan, straight or round a pole, and what shapes leave of them. Frame: x east,
// y north, metres.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/plan/region.hpp"

#include <variant>
#include <vector>

namespace coilwright {

/// A full circle, walked clockwise from where the datum's bearing meets it. Places on it are
/// degrees clockwise from the datum.
struct CirclePath {
    Vec2 centre{0, 0};
    double radius = 0;
    Bearing datum;
};
/// A straight stretch. Places on it are metres from `from`.
struct LinePath {
    Vec2 from{0, 0}, to{0, 0};
};
using Path = std::variant<CirclePath, LinePath>;

/// Where an interval ends: its place on the path, and the shape whose boundary cuts it there (the
/// first of those that cut within plan_weld); -1 at an end of the path itself.
struct PathEnd {
    double at = 0;
    int shape = -1;
};
struct Interval {
    PathEnd start, end;
};

/// What is kept of a path less the insides of shapes, in the order of the path, by closed forms. On
/// a circle 0 <= start < 360 and start < end < start + 360, so that an interval over the datum ends
/// beyond 360 and comes last; a circle that nothing cuts is the one interval from 0 to 360 with no
/// shape. Kept pieces shorter than shortest_kept go; cuts no longer than plan_weld count for
/// nothing, and so does a shape whose boundary the path runs along. Nothing of a path without
/// length. Circle of radius 2 about the origin, datum 0, less the box 0 < y < 3, |x| < 1 -> 30 to
/// 330. Precondition: numbers are finite.
std::vector<Interval> kept_intervals(const Path& path, const std::vector<Shape>& taken);

inline constexpr double shortest_kept = 1e-6; // metres

/// Length of the path, metres; length of an interval of it; the point at a place of it.
double length_of(const Path& path);
double length_of(const Path& path, const Interval& interval);
Vec2 point_at(const Path& path, double place);

} // namespace coilwright
