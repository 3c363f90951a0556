// Barbed wire between the courses.
#pragma once

#include "geometry/plan/schedule.hpp"

namespace coilwright {

/// Strands in each joint: as the design says, else 2, or 1 where the tube lies under 12 in flat
/// (common practice).
int wire_strands(const Design& design, const std::string& tube);

/// Wire of a ring runs unbroken through bonds with tunnels and buttresses.
/// Fills wire_length of courses, rings and straights: of the wire laid on top of each course, under the next (0 on the
/// last). Per strand: the centreline length of the course's runs that the next course covers, one
/// lap where a strand closes a full ring, and a tail of one tube width turned down at each end of a
/// covered stretch.
void measure_wire(Schedule& schedule, const Design& design);

} // namespace coilwright
