// Laying the courses: from a sound design to its schedule.
#pragma once

#include "geometry/plan/schedule.hpp"

namespace coilwright {

/// Lays every course. Preconditions: read_design gave no diagnostic, check_layout gave none on the
/// design as fitted, nothing is left to fit. Pure: the same design gives the same numbers.
/// `decide` answers for plan regions that doubles cannot (geometry/exact); without it such a region
/// is taken a few micrometres off.
Schedule lay(const Design& design, const DecideRegion& decide = {});

/// Plan area of a ring between two radii less a parallel strip |y| <= a on one side, for a < r0:
/// the area that an opening takes out of a course. r0 2, r1 2.4, a 0.5 -> 0.403557.
double strip_area_in_ring(double inside_radius, double outside_radius, double half_width);

} // namespace coilwright
