// The line of thrust that asks the least strength of the fill.
#pragma once

#include "geometry/statics/joint_checks.hpp"

#include <optional>
#include <vector>

namespace coilwright {

struct LeastPressure {
    ThrustLine line;                // stands where a line keeps within the contacts
    double factor = 0;              // strength over pressure in its worst joint; 0: no line
    std::vector<JointCheck> joints; // of that line
};

/// Of all lines of thrust the one whose worst joint has the most strength to spare; of several, the
/// one whose rings carry least. By the safe theorem the wall needs no more. In level joints the
/// normal force is the weight above, N per metre taken at the middle of the contact, so that N/(d -
/// 2e)
/// <= strength/k is e <= d/2 - k N/(2 strength): linear in k. A plumb wall of 30 kN/m on a flat of
/// 0.25 m, strength 300 kPa: 2.5. `only`: the joint under this course alone counts, the line keeps
/// anywhere within the others. Preconditions as dome_slice; strengths > 0.
LeastPressure least_pressure(const std::vector<WallCourse>& courses, const DomeSlice& what = {},
                             std::optional<int> only = {});

} // namespace coilwright
