// Dividing runs into tubes so that joints keep their lap.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// Fills run.tubes (lengths, bearings, laps; ids are given later). No tube is longer than
/// longest_tube along the centreline; joints lie at least joint_lap, along the centreline, from the
/// places of `keep_from` and from the run's cut ends where any placing with at most one tube more
/// allows it, else as far as can be, and lap_short says so. A closed ring takes its first joint
/// near `datum` + 180 degrees, alternating with the course. `keep_from`: bearings, degrees, of the
/// joints and cuts of the course below and of the cuts of the course above, in the same dome.
void divide_run(Run& run, const Ring& ring, const CourseRules& rules,
                const std::vector<double>& keep_from, Bearing datum, int course_number);

/// The same for a straight run; `keep_from` as distances along its line.
void divide_straight(Straight& straight, const CourseRules& rules,
                     const std::vector<double>& keep_from, int course_number);

/// Bearings of all tube joints of a ring that are not cuts.
std::vector<double> joint_bearings(const Ring& ring);

} // namespace coilwright
