// What limit analysis finds of a dome.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/statics/dome_statics.hpp"

#include <vector>

namespace coilwright {

/// `geometric-safety`: by how much every joint could shrink in the worst strip before no line of
/// thrust keeps within it. Not judged where a course finds nothing to lie on.
std::vector<Finding> dome_findings(const Design& design, const DomeForm& dome,
                                   const DomeStatics& statics);

} // namespace coilwright
