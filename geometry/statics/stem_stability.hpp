// The plumb wall below the springline as it takes the dome's thrust to the ground.
#pragma once

#include "geometry/statics/dome_slice.hpp"

namespace coilwright {

/// Per radian; unlimited where nothing pushes.
struct StemStability {
    double weight = 0;  // of the stem with its buried courses, N
    double sliding = 0; // friction x all weight above the ground / thrust
    double overturning =
        0; // moment of the weights about the outer end of the lowest flat / of the thrust
};

/// The stem as one rigid free wall without rings or piers, the thrust at the springline and the
/// weight above it at its point of action; the soil's help is left out. `above`: the force in the
/// joint at the springline, as springline_thrust finds it; `springline_course`: the course over
/// that joint. Stem 30 kN 0.3 m inside the toe, 20 kN of dome 0.4 m inside it, 4 kN 1 m above the
/// bottom: (9 + 8)/4 = 4.25; at friction 0.4: 5. Preconditions: springline_course > 1; radii as
/// dome_courses.
StemStability stem_stability(const std::vector<WallCourse>& courses, int springline_course,
                             const JointThrust& above, double ground_friction);

} // namespace coilwright
