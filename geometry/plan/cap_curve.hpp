// How the inside curve runs on past its apex, to give the solid courses that close a dome or a
// vault their outside.
#pragma once

#include "geometry/plan/profile.hpp"

namespace coilwright {

/// x_ext(z): the profile up to its apex; past it the same circle, negative, for a pointed profile
/// whose centres lie more than half a tube beyond the pole; for every other the slope of the last
/// two courses below the apex, continued.
struct CapCurve {
    bool by_formula = false;
    double line_z = 0;      // middle of the last course below the apex...
    double line_radius = 0; // ...its half-width, and the step-in per metre of height from there on
    double line_slope = 0;
};

/// Preconditions: last_middle is the height of the last course's middle below the apex, z about the
/// same origin as the springline.
CapCurve make_cap_curve(const Profile& profile, double springline, double last_middle,
                        double course_height, double width);

/// x_ext at a height. Pointed a 54, rho 135 (in), springline 20, at z 132.5 -> -6.376.
double extended_half_width(const Profile& profile, double springline, const CapCurve& cap,
                           double z);

/// How many courses above `last` are laid solid while x_ext + w is at least w / 2, up to
/// `most`; `middle_of_next` is the middle of course last + 1.
int count_cap_courses(const Profile& profile, double springline, const CapCurve& cap,
                      double middle_of_next, double course_height, double width, int most);

/// The rim of the last solid course: from x_ext + w at its middle straight to at least half of that
/// at its top. The outside half-width at a height between the two.
double cap_rim(const Profile& profile, double springline, const CapCurve& cap, double width,
               double last_middle, double top, double z);

} // namespace coilwright
