// Checks with the snow that a design states and without it.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/design/design.hpp"
#include "geometry/statics/dome_slice.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// What checks say under some loads.
using FindingsUnder = std::function<std::vector<Finding>(const DomeLoads&)>;

/// The findings without snow; where [site] snow is stated also with it, of each check the worse,
/// with both values told. Twice the work then, and none without.
std::vector<Finding> worse_of_snow(const Design& design, const FindingsUnder& findings_under);
/// Whether snow is stated and more than none.
bool has_snow(const Design& design);

} // namespace coilwright
