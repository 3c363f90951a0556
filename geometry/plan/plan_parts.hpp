// A plan expression taken apart where nothing meets.
#pragma once

#include "geometry/plan/region.hpp"

namespace coilwright {

struct PlanPart {
    PlanExpression expression;
    std::vector<int> shapes; // index in the whole of each of its shapes
};

/// Parts whose regions touch nowhere, by the bounds of their shapes: the region of the whole is the
/// loops of all parts. In the order of their first terms. Precondition: is_sound.
std::vector<PlanPart> separate_parts(const PlanExpression& expression);

} // namespace coilwright
