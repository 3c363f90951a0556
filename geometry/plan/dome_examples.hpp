// What could be written in place of the measures of a dome that cannot be laid.
#pragma once

#include "geometry/design/design.hpp"

#include <string>

namespace coilwright {

/// Why no course of the dome is a ring, as the rest of a sentence that starts with the dome's
/// inside radius: "which is not more than its skylight's 1 ft 6 in". Preconditions of both
/// functions below and of this one: the dome, its tube and the course rules are sound and nothing
/// is left to fit.
std::string why_no_ring(const Design& design, const Dome& dome);

/// Values, each tried, with which the dome has a ring: a smaller skylight, a lesser
/// `least_inside_radius`, a wider dome, or a wider and higher one. In whole 1/8 in or mm, by the
/// design's unit: `inside_diameter = "1 ft 5 in"`.
std::string example_with_ring(const Design& design, const Dome& dome);

/// The same for a dome of most_courses or more: a lower rise, a lower springline, both, a smaller
/// dome or higher courses.
std::string example_with_fewer_courses(const Design& design, const Dome& dome);

} // namespace coilwright
