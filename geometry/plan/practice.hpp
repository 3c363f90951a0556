// Advice of the trade on a design that can be laid.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// One finding a rule and subject, only where there is something to say: sills and heads that miss
/// a course joint by more than 10 mm, tubes too narrow for the diameter, the greatest step-in over
/// a quarter and over half of the tube, a course that finds nothing to lie on (fails), a stated
/// tamped width off practice, joints that cannot keep their lap, frames deeper than the band in
/// which they lie inside the wall, square heads without a lintel (fails), the skylight
/// that the last ring really leaves, a hole too wide for a cap's bags (fails).
std::vector<Finding> practice_findings(const Design& design, const Schedule& schedule);

/// The same, and part of it, of the steps inward of one dome's courses: over a quarter and over
/// half of the tube, a step that a measured top changes by more than 1 in, and the first course
/// whose flat finds none below it to rest on, which fails.
std::vector<Finding> step_findings(const Design& design, const DomeForm& form);

/// The same, and part of it, of what stands beside a plain dome: a buttress that ends less than 18
/// in above the springline, the valley between joined domes, a tunnel that spans over 4 ft, a fan
/// whose bags are under 4 in wide at the form, a head that leans in over its sill and so takes
/// rain.
std::vector<Finding> addition_findings(const Design& design, const Schedule& schedule);

} // namespace coilwright
