// Faults of a design that show only when it is laid out.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// Faults of sound elements: an opening wider than the inside circle at its height, above the last
/// ring, overlapping another or closer to it than one tube width, a skylight that leaves no ring, a
/// profile that leaves no room, more than most_courses, elements that this version cannot lay.
/// Elements that read_design found unsound are skipped. Precondition: the design as fitted
/// (fit.hpp).
std::vector<Diagnostic> check_layout(const Design& design);

} // namespace coilwright
