// The text of a commented design to start from.
#pragma once

#include "geometry/design/design.hpp"

#include <optional>
#include <string>

namespace coilwright {

/// What the flags of `coilwright new` ask for.
struct FirstDesign {
    std::string name = "First dome";
    DisplayUnit unit = DisplayUnit::feet;
    Use use = Use::store;
    double diameter = 0;                              // inside, metres
    ProfileKind profile = ProfileKind::pointed;       // pointed, round, catenary or parabola
    std::optional<HeadKind> door = HeadKind::pointed; // none: no door
    std::optional<int> windows{};                     // none: two, or what a room to live in needs
};

/// Inside diameters that the tubes of first_design serve, metres: at the most as many feet as the
/// widest is inches wide when tamped.
inline constexpr double least_first_diameter = 1.2;
inline constexpr double greatest_first_diameter = 19 * metres_per_foot;
inline constexpr int most_first_windows = 6;

/// A design file by common practice: a tube at least as many inches wide as the dome is feet, a
/// pointed dome as tall as wide above the springline and other curves taller, openings that start
/// and end on course joints, in rooms to live in a way out and light. Whether it can be laid is for
/// plan_building to say (a small dome has no room for many windows), whether it keeps the checks
/// for all_findings.
std::string first_design(const FirstDesign& wish);

} // namespace coilwright
