// Barbed wire between the courses.
#pragma once

#include "geometry/plan/schedule.hpp"

namespace coilwright {

/// Strands in each joint: as the design says, else 2, or 1 where the tube lies narrower than the
/// rule wire.narrow_lay_flat (12 in; common practice).
int wire_strands(const Design& design, const std::string& tube);

/// Fills wire_length of courses, rings and straights, in metres: of the wire laid on top of each
/// course, under the next (0 on the last). Per strand: the centreline length of the course's runs
/// that the next course covers, one lap where a strand closes a full ring, and a tail of one tube
/// width turned down at each end of a covered stretch; on a cap disc the lengths of the bags of the
/// disc above. Wire of a ring runs unbroken through bonds with tunnels and buttresses. Two strands
/// on a full ring, centreline 61.5 in, lap 24 in: 2 (386.4 + 24) = 820.8 in.
void measure_wire(Schedule& schedule, const Design& design);

} // namespace coilwright
