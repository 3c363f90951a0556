// Whether an opening, taken alone, has its place in a dome's wall, and sizes that would have one.
#pragma once

#include "geometry/plan/wall_form.hpp"

#include <optional>

namespace coilwright {

/// Of the circle of a wall's face, what an opening or a tunnel may take at the most: jambs nearer
/// to its widest place could not be built.
inline constexpr double widest_share = 0.98;

enum class Misfit {
    none,
    below_floor,     // a ring below the floor is never cut
    too_high,        // its head, fan or lintel ends above the last ring but one
    too_wide,        // at a height it is wider than the inside circle
    lintel_too_long, // its lintel or fan is
    at_foot,         // a circle that stands on the wall's own foot
    fan_off_joint,   // its fan does not spring from a course joint
    cuts_nothing,    // no course's middle finds it a course height wide
    niche_too_deep   // deeper than two thirds of the tube
};

struct OpeningPlace {
    Misfit misfit = Misfit::none;
    double z = 0;    // too_wide, lintel_too_long: where it is too wide...
    double half = 0; // ...by how much of half-width...
    double room = 0; // ...on an inside face of this radius
};
/// How far a sill, a head or a springing may miss a course joint, metres.
inline constexpr double joint_slack = 0.010;

OpeningPlace place_in_wall(const OpeningForm& opening, const DomeForm& dome);

/// Upper end of the rings proper of a dome, and the highest that a head may reach: a ring is to
/// close over it.
double rings_end(const DomeForm& dome);
double highest_head(const DomeForm& dome);

/// What could be written in place of an opening's measures: those that are set. All were tried.
struct OtherMeasures {
    std::optional<double> width, sill, height;
};

/// Measures, in whole 1/8 in or mm by `unit`, with which the opening has its place in the wall: as
/// few as will do of a lower head, a lower sill and a lesser width (`width_first`: that before the
/// others), each as near to what is written as whole courses or tenths of the width come. Nothing
/// where none was found. Precondition: the opening's own place is known to be wrong.
std::optional<OtherMeasures> workable_measures(const Opening& opening, const OpeningForm& form,
                                               const DomeForm& dome, DisplayUnit unit,
                                               bool width_first);

/// The same for an opening that cuts no course: taller, wider, or on a course joint.
std::optional<OtherMeasures> cutting_measures(const Opening& opening, const OpeningForm& form,
                                              const DomeForm& dome, DisplayUnit unit);

} // namespace coilwright
