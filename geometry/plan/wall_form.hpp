// The wall of a dome and the openings in it as functions of height: what both the courses (what the
// crew lays) and the solids (what the architect gets) are cut from.
#pragma once

#include "geometry/plan/cap_curve.hpp"
#include "geometry/plan/course_levels.hpp"
#include "geometry/plan/profile.hpp"

#include <optional>
#include <string>

namespace coilwright {

/// The wall of one dome. z is the height above the finished floor; the frame's origin is the
/// design's, the pole stands at `at`.
struct DomeForm : CourseLevels {
    std::string id;
    Vec2 at{0, 0};
    Use use = Use::store;
    Profile profile; // inside face above the springline
    double springline = 0;
    double width = 0; // w, tamped
    std::string tube; // id of its type
    Bearing datum;
    double chain_height = 0; // p

    int last_ring = 0;           // number of the last ring course of the dome proper
    int curb_courses = 0;        // plumb rings on it (skylight), else 0
    int cap_courses = 0;         // solid discs that close it, else 0
    double last_ring_radius = 0; // r of course `last_ring`
    CapCurve cap;                // the outside of the cap

    // The lower courses may be of a wider tube, or of two rings side by side.
    std::string lower_tube;                // id
    double lower_width = 0, lower_top = 0; // tamped width below that joint; width 0: none
    bool second_wythe = false;             // a second ring of width w stands outside...
    double second_wythe_top = 0;           // ...below that joint

    int courses() const { return last_ring + curb_courses + cap_courses; }
    double top() const { return course_bottom(courses() + 1); }
    /// Height at which the room ends: the underside of the cap, or `top()` of an open dome.
    double ceiling() const { return course_bottom(last_ring + curb_courses + 1); }
    double apex() const { return springline + profile.rise; } // of the inside curve
};

/// Works out rings, curb and cap. Ring courses are all n below the apex with r_n above the
/// skylight's radius and at least `least_inside_radius` (default w / 2: a tube bends no tighter). A
/// closed dome then has cap courses, solid discs of outside radius x_ext(z_n) + w, while that is at
/// least w / 2, and one at the least; a skylight has `curb` plumb courses on its last ring.
/// Preconditions: the dome, its tube and the course rules are sound and nothing is left to fit.
DomeForm make_dome_form(const Design& design, const Dome& dome);

/// Radius of the inside face at a height: the profile; above the last ring's middle not less than
/// r_last under a skylight and r_last / 2 under a cap, so that the room ends in a face and not in a
/// point. 0 in the cap and outside bottom()..top(). Continuous from bottom() to ceiling().
double inside_radius(const DomeForm& form, double z);
/// Radius of the outside face: x_ext(z) + w, plumb in a curb; above the middle of the last cap disc
/// straight to a rim of at least half that disc's radius. 0 outside bottom()..top(). Continuous.
double outside_radius(const DomeForm& form, double z);
/// That of the base ring: no course stands farther out.
double base_outside(const DomeForm& form);
/// Width of the first ring's tube at a height: the lower tube's below lower_top, else w.
double ring_width(const DomeForm& form, double z);
/// Whether a second ring stands outside the first at a height.
bool has_second_wythe(const DomeForm& form, double z);
/// Id of the type of the first ring's tube.
const std::string& ring_tube(const DomeForm& form, double z);

/// A hole through a wall: a prism along an axis, symmetric about it. In a dome the axis runs along
/// `bearing` from the pole, in a tunnel's end wall along the tunnel from its dome's pole, in a
/// tunnel's side square to the tunnel from its axis.
struct OpeningForm {
    std::string id;
    std::string in;
    OpeningUse use = OpeningUse::window;
    HeadKind head_kind = HeadKind::square;
    Bearing bearing;
    double half_width = 0;
    double sill = 0;
    double springing = 0; // where the head starts; equal to top for square, mid-height for circle
    double top = 0;
    std::optional<Profile> head; // none for square
    Vec2 origin{0, 0};           // set by place_opening (building_form.hpp)
    Vec2 axis{0, 1};
    bool in_tunnel = false;
    TunnelSide side = TunnelSide::end; // in a tunnel
    double along = 0;                  // in a tunnel's side: of its axis, from the dome's pole
    double niche_depth = 0;            // from the inside face; 0: it goes through
    double fan_depth = 0;              // of the bags of a fan-laid head; 0: corbelled
    std::optional<LintelSpec> lintel;  // of a square head, where the design gives one
};

OpeningForm make_opening_form(const Opening& opening);

/// a(z): half-width of the hole at a height, 0 outside sill <= z < top.
double half_width(const OpeningForm& form, double z);

/// Half-width at which the hole cuts course n where there is a wall: a(z_n); 0 where 2 a(z_n) < t.
double cut_half_width(const OpeningForm& opening, const CourseLevels& levels, int n);

/// Whether the hole cuts course n of the dome: sill <= z_n < top (heights within 1 um are equal)
/// and 2 a(z_n) >= t; over a narrower one the ring runs on.
bool cuts_course(const OpeningForm& opening, const DomeForm& dome, int n);

/// Degrees from the hole's bearing to where its side meets a circle about the pole: asin(a / r).
/// Precondition a < r.
double half_angle_degrees(double half_width, double radius);

} // namespace coilwright
