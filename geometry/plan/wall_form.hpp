// The wall of a dome and the openings in it as functions of height: what both the courses (what the
// crew lays) and the solids (what the architect gets) are cut from.
#pragma once

#include "geometry/plan/profile.hpp"

#include <optional>
#include <string>

namespace coilwright {

/// The wall of one dome. z is the height above the finished floor; the frame's origin is the
/// design's, the pole stands at `at`.
struct DomeForm {
    std::string id;
    Vec2 at{0, 0};
    Use use = Use::store;
    Profile profile;            // inside face above the springline
    double springline = 0;
    double course_height = 0;   // t
    int foundation = 0;         // F, courses below the floor
    double width = 0;           // w, tamped
    Bearing datum;
    double chain_height = 0;    // p

    int last_ring = 0;          // number of the last ring course of the dome proper
    int curb_courses = 0;       // plumb rings on it (skylight), else 0
    int cap_courses = 0;        // solid discs that close it, else 0
    double last_ring_radius = 0;  // r of course `last_ring`
    double cap_start_slope = 0;   // past the apex: step-in per metre of height when continued straight
    bool cap_by_formula = false;  // past the apex: the pointed formula, negative

    int courses() const { return last_ring + curb_courses + cap_courses; }
    double bottom() const { return -foundation * course_height; }
    double course_bottom(int n) const { return (n - 1 - foundation) * course_height; }
    double course_middle(int n) const { return (n - 0.5 - foundation) * course_height; }
    double top() const { return course_bottom(courses() + 1); }
    /// Height at which the room ends: the underside of the cap, or `top()` of an open dome.
    double ceiling() const { return course_bottom(last_ring + curb_courses + 1); }
    double apex() const { return springline + profile.rise; } // of the inside curve
};

/// Works out rings, curb and cap (DESIGN 3.3, CORRECTIONS 2 and 6). Preconditions: the dome, its
/// tube and the course rules are sound and nothing is left to fit; the count of courses is at most
/// `most_courses` (check_layout says so before).
DomeForm make_dome_form(const Design& design, const Dome& dome);
inline constexpr int most_courses = 400;

/// Radius of the inside face at a height: the profile up to the last ring's middle, plumb in a curb,
/// 0 in the cap. 0 outside bottom()..top().
double inside_radius(const DomeForm& form, double z);
/// Radius of the outside face: x_ext(z) + w, in the last half course of a cap never less than half
/// of the last disc's. 0 outside bottom()..top().
double outside_radius(const DomeForm& form, double z);

/// A hole through a wall: a prism along `bearing` from the pole, symmetric about it.
struct OpeningForm {
    std::string id;
    std::string in;
    OpeningUse use = OpeningUse::window;
    HeadKind head_kind = HeadKind::square;
    Bearing bearing;
    double half_width = 0;
    double sill = 0;
    double springing = 0;   // where the head starts; equal to top for square, mid-height for circle
    double top = 0;
    std::optional<Profile> head; // none for square
};

OpeningForm make_opening_form(const Opening& opening);

/// a(z): half-width of the hole at a height, 0 outside sill <= z < top.
double half_width(const OpeningForm& form, double z);

/// Whether the hole cuts course n of the dome: sill <= z_n < top (heights within 1 um are equal) and
/// 2 a(z_n) >= t; a narrower cut is laid over (CORRECTIONS 21).
bool cuts_course(const OpeningForm& opening, const DomeForm& dome, int n);

/// Degrees from the hole's bearing to where its side meets a circle about the pole: asin(a / r).
/// Precondition a < r.
double half_angle_degrees(double half_width, double radius);

} // namespace coilwright
