// What domes and tunnels share in weighing a course and finding its joint.
#pragma once

#include "geometry/statics/dome_slice.hpp"

namespace coilwright {

/// Section of plaster on one face of a course, m2: over the crests along the slope, in the groove
/// between two rounds, and in the step. 0.05 thick, t 0.1, no step: 0.05 x 0.1 + (1 - pi/4) 0.1^2 /
/// 2
/// -> 0.006073. None at all where the thickness is 0.
double plaster_section(double thickness, double course_height, double step);

/// The ends of the joint under a course: the overlap of the flats, `edge` within the faces.
void set_contact(WallCourse& course, const WallCourse* below, double edge);

/// Weights in N per metre and centres of courses whose faces are set, for walls with parallel
/// sides; of the solid ones at the crown the right half.
void weigh_parallel(std::vector<WallCourse>& courses, const Design& design, const DomeLoads& loads);

} // namespace coilwright
