// Heads of openings as they are built, seen from inside: the bags of a fan, a lintel on its joint.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

namespace coilwright {

/// The fans and lintels that are set with this course of a part.
std::vector<const Fan*> fans_of(const BuildingPlan& plan, const CoursePart& part);
std::vector<const Lintel*> lintels_of(const BuildingPlan& plan, const CoursePart& part);

/// Under a heading: the figure to scale, and its measures beside it.
void add_fan(Flow& flow, const Drafting& drafting, const Fan& fan, double text_size);
void add_lintel(Flow& flow, const Drafting& drafting, const Lintel& lintel, double text_size);

} // namespace coilwright
