// Designs written as text for the tests of the checks, laid, and their findings.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/plan/section.hpp"

#include <string>
#include <vector>

namespace coilwright::testing {

constexpr double inch = metres_per_inch, foot = metres_per_foot, square_foot = foot * foot;

/// A room of 14 ft to live in, pointed, on a stem of 50 in; 1-1/2 in of plaster, ground 6 in below
/// the floor, four courses of 5 in below it. Its door (square, 38 by 85 in) leaves 32 in clear, its
/// window is 36 by 40 in from a sill at 35 in.
extern const std::string room_design;

/// The text with one piece, which it must have, replaced.
std::string with(std::string text, const std::string& old_piece, const std::string& new_piece);

/// Laid; the design must be sound.
BuildingPlan laid(const std::string& design);

/// The finding of a code, and of a subject where it is given; there must be one.
Finding the(const std::vector<Finding>& findings, const std::string& code,
            const std::string& subject = {});
bool has(const std::vector<Finding>& findings, const std::string& code);

/// A piece of a remedy: the first group of a pattern that it must match.
std::string taken(const Finding& finding, const std::string& pattern, int group = 1);

} // namespace coilwright::testing
