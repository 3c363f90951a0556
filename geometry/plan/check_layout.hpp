// Faults of a design that show only when it is laid out.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// Faults of sound elements: an opening wider than the inside circle at its height, above the last
/// ring, overlapping another or closer to it than one tube width, a skylight that leaves no ring, a
/// profile that leaves no room, more than most_courses, elements that this version cannot lay.
/// Elements that read_design found unsound are skipped. Precondition: the design as fitted (fit.hpp).
std::vector<Diagnostic> check_layout(const Design& design);

/// Advice on a design that can be laid: sills and heads that miss a joint, tubes too narrow for the
/// diameter, step-ins over a quarter and over half of the tube, a stated tamped width off practice,
/// joints that cannot keep their lap, frames deeper than their band, square heads without a lintel.
std::vector<Finding> practice_findings(const Design& design, const Schedule& schedule);

} // namespace coilwright
