// A tunnel: a profile extruded along a bearing from a dome's pole, as a function of height.
#pragma once

#include "geometry/plan/cap_curve.hpp"
#include "geometry/plan/course_levels.hpp"
#include "geometry/plan/region.hpp"

#include <algorithm>
#include <optional>
#include <string>

namespace coilwright {

/// Positions along the axis count from the pole of the dome `from`, across it to the left (the
/// smaller bearing is negative; see region.hpp for Box).
struct TunnelForm : CourseLevels {
    std::string id;
    std::string from, to; // dome ids; `to` empty: it ends in the open
    Vec2 origin{0, 0};    // pole of `from`
    Bearing bearing;
    Profile profile;
    double springline = 0;
    double width = 0; // w, tamped
    std::string tube; // id of its type
    double reach = 0; // outer face of the tunnel and of its end wall, or the far pole
    bool end_wall = false;
    bool wall_stays = false; // the dome's wall is not opened
    int side_courses = 0;    // courses with a wall each side of the void, foundation included
    int crown_courses = 0;   // solid courses that close the vault
    CapCurve cap;

    Vec2 axis() const { return along(bearing); }
    double crown() const { return springline + profile.rise; }
    /// Underside of the tubes that lie over its axis: the crown's first course, or its void's
    /// crown.
    double ceiling() const { return std::min(crown(), course_bottom(side_courses + 1)); }
    double top() const { return course_bottom(side_courses + crown_courses + 1); }
};

/// Which way a tunnel lies, seen from the pole of one of its domes: its bearing runs from the first
/// to the last, 90 degrees from west to east, and 270 from the east dome. None of any other dome.
std::optional<Bearing> bearing_from(const Tunnel& tunnel, const std::string& dome);
std::optional<Bearing> bearing_from(const TunnelForm& tunnel, const std::string& dome);

/// Preconditions as for make_dome_form: the tunnel, its domes and its tube are sound.
TunnelForm make_tunnel_form(const Design& design, const Tunnel& tunnel);

/// b(z): half-width of the void; the springing width below the floor too, 0 from the crown up.
double inner_half_width(const TunnelForm& form, double z);
/// Whether the void stops the ring of a course whose middle lies at z: where it is less wide than a
/// course is high, the ring runs on over the vault's form.
bool stops_ring(const TunnelForm& form, double z);
/// Half-width of the outside: x_ext(z) + w, 0 outside bottom()..top().
double outer_half_width(const TunnelForm& form, double z);

/// The void as a box in plan, from the pole to the end wall's inside face or to the end.
Box tunnel_void(const TunnelForm& form, double z);
/// The body that the void is cut from, from the pole to the end.
Box tunnel_body(const TunnelForm& form, double z);

} // namespace coilwright
