// Dividing runs into tubes so that joints keep their lap.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// How much farther the outer thread of a run reaches at its start and end than the ray from the
/// pole, or the square cut of a straight, through the end of its centreline: metres, below 0 where
/// it ends short of it. A plumb jamb parallel to the opening's axis leaves the outer thread more:
/// on faces of radii 1.2 and 1.6 m, 0.4 m from the axis, 1.6 * (asin(0.4 / 1.4) - asin(0.4 / 1.6))
/// = 0.0593.
struct OuterEnds {
    double start = 0, end = 0;
};

/// Fills run.tubes (lengths, bearings, laps; ids are given later). No tube is longer than
/// longest_tube along the centreline; joints lie at least joint_lap, along the centreline, from the
/// places of `keep_from` and from the run's cut ends where an equal division into as few tubes as
/// may be, or one more, allows it, else as far as can be, and lap_short says so. A closed ring
/// takes its first joint near `datum` + 180 degrees, alternating with the course. `keep_from`:
/// bearings, degrees, of the joints and cuts of the course below and of the cuts of the course
/// above, in the same dome. A tube is cut to its outer thread, which `outer` has at the run's ends,
/// or its centreline if that is longer.
void divide_run(Run& run, const Ring& ring, const CourseRules& rules,
                const std::vector<double>& keep_from, Bearing datum, int course_number,
                OuterEnds outer = {});

/// The same for a straight run; `keep_from` as distances along its line, `outer` of the longer of
/// its edges.
void divide_straight(Straight& straight, const CourseRules& rules,
                     const std::vector<double>& keep_from, int course_number, OuterEnds outer = {});

/// Bearings of all tube joints of a ring that are not cuts.
std::vector<double> joint_bearings(const Ring& ring);

} // namespace coilwright
