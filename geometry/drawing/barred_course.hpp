// The sheet of a course that finds nothing to rest on: that it is not to be laid, and why.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

namespace coilwright {

/// The lowest course of the part's dome that does not rest on the one below, where it is this
/// course or one under it: then this one must not be laid. 0: it may; of tunnels always.
int barred_from(const BuildingPlan& plan, const CoursePart& part);

/// DO NOT LAY in the largest type, how far the course misses the one below, and what would mend the
/// design; no setting, no tubes. Precondition: barred_from(drafting.plan, part) > 0.
std::vector<Sheet> barred_course_pages(const Drafting& drafting, const CoursePart& part);

} // namespace coilwright
