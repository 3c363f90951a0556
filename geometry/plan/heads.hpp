// How the head of an opening is closed: corbelled against its form, as a fan of tapered bags, or by
// a lintel; and how wide each leaves the courses open.
#pragma once

#include "geometry/plan/tunnel_form.hpp"
#include "geometry/plan/wall_form.hpp"

#include <optional>
#include <string>

namespace coilwright {

/// A fan of short tapered bags around the form of an arched head.
struct Fan {
    std::string opening;
    int set_before_course = 0; // its bags are laid when the courses reach the springing
    int count = 0;    // odd, the keystone among them; the nearest odd to outer arc / w, ties up
    double depth = 0; // along the radius
    double outer_arc = 0, inner_arc = 0;     // whole lengths of the two curves, metres
    double outer_width = 0, inner_width = 0; // of one bag, along the curves
    // Of the keystone, straight across: in a pointed head it is the wedge astride the apex.
    double keystone_outer = 0, keystone_inner = 0;
    double face_area = 0;   // between the two curves, m2
    double fill_volume = 0; // that times the width of the wall's tube
};

/// A straight beam over a square head.
struct Lintel {
    std::string opening;
    LintelKind kind = LintelKind::timber;
    double bottom = 0;                     // the joint it lies on, above the floor
    double depth = 0;                      // its height
    double width = 0;                      // across the wall
    double length = 0;                     // the opening's width and both bearings
    double bearing = 0;                    // on each side, along the lintel
    int first_course = 0, last_course = 0; // whose tubes stop at its ends
    double packing = 0;                    // height left to pack up to the next joint
    double centre_distance = 0;            // from the origin of the opening's axis to its long axis
    double bearing_area = 0;               // of both ends on the course below, m2
    double shows_inside = 0; // how far its inner face stands into the room at mid-span
    // From its outer face to the outside of the round wall that its first course lays round it; 0
    // in a tunnel's straight wall.
    double open_behind = 0, open_behind_ends = 0; // at mid-span, at its ends
    double carried_share = 0; // of the width of the course above it, at mid-span
};

/// Behind a lintel a pocket less deep is closed by tamping: metres.
inline constexpr double narrowest_pocket = 0.02;

/// The fan of an opening in a wall whose tubes are `width` wide: outer arc / width rounded to the
/// nearest odd count. Semicircle a 16, depth 15, w 15 (any unit): 97.4 / 15 = 6.49 -> 7. A circle's
/// runs over its upper half. None where the head is not laid as a fan.
std::optional<Fan> make_fan(const OpeningForm& opening, double width, int springing_course);

/// How high the lower outer corner of bag i lies over the springing; bags count from 0 up each
/// side. Round, a 16, depth 15, 7 bags: 0, then 31 sin(180 / 7) = 13.45. Precondition: the opening
/// has that fan.
double fan_corner(const OpeningForm& opening, const Fan& fan, int i);
/// Area of a bag's face: its mean width times the depth; the keystone takes what the others leave
/// of the fan's.
double fan_bag_area(const Fan& fan, bool keystone);

/// Upper end of a fan's outer curve; of another head its own.
double fan_top(const OpeningForm& opening);

/// The courses whose tubes stop at the ends of a square opening's lintel: from the first whose
/// middle lies above the head, as many as its depth takes up. None where the design gives no
/// lintel.
struct LintelCourses {
    int first = 0, last = 0;
    double half_length = 0;
};
std::optional<LintelCourses> lintel_courses(const OpeningForm& opening, const CourseLevels& levels);

/// The lintel of a square opening in a dome, in the place that gives it the most bearing on the
/// ring below; in a tunnel's wall over the middle of the wall below. None where the design gives
/// none.
std::optional<Lintel> make_lintel(const OpeningForm& opening, const DomeForm& dome);
std::optional<Lintel> make_lintel(const OpeningForm& opening, const TunnelForm& tunnel);

/// The heights between which an opening's lintel takes up its whole length. None without one.
struct LintelBand {
    double low = 0, high = 0, half_length = 0;
};
std::optional<LintelBand> lintel_band(const OpeningForm& opening, const CourseLevels& levels);

/// What an opening takes up of a wall at a height, its fan and the whole length of its lintel
/// included, and the top of that. `band`: the opening's own, found once for many heights.
double taken_half_width(const OpeningForm& opening, const std::optional<LintelBand>& band,
                        double z);
double taken_top(const OpeningForm& opening, const CourseLevels& levels);

/// Half-width that the tubes of course n keep clear of an opening: a(z_n) between sill and head
/// where that is at least half a course height; at the fan's outer curve above a fan's springing;
/// past the bearings in the courses of a lintel. 0: not cut, as in every course after `last`.
double laid_half_width(const OpeningForm& opening, const CourseLevels& levels, int last, int n);
/// The same in a dome's rings.
double laid_half_width(const OpeningForm& opening, const DomeForm& dome, int n);

} // namespace coilwright
