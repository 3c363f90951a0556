// The region of a plan expression by exact arithmetic: what decides where doubles cannot, and what
// the doubles are judged by in tests.
#pragma once

#include "geometry/plan/region.hpp"

namespace coilwright {

/// The region as in region.hpp, by regularised Boolean sets over circles and segments with exact
/// predicates and constructions (CGAL), a millisecond or less a shape. Like fast_region it takes
/// curves that coincide within plan_weld as one, and drops edges shorter than that; nothing else is
/// rounded before the coordinates of the result. Never throws: `decided` is false where the
/// expression is not sound or CGAL finds a fault. Fits DecideRegion.
Region exact_region(const PlanExpression& expression);

} // namespace coilwright
