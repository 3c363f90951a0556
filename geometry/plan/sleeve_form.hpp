// A sleeve: a short pipe through a wall, for water, waste or wires.
#pragma once

#include "geometry/design/design.hpp"
#include "geometry/plan/course_levels.hpp"

#include <string>

namespace coilwright {

struct SleeveForm {
    std::string id;
    std::string in;    // id of a dome or a tunnel
    Bearing bearing;   // outward
    Vec2 origin{0, 0}; // where its axis starts in plan: the pole, or a point on a tunnel's axis
    double height = 0; // of its centre above the floor
    double diameter = 0;
    bool in_tunnel = false;
    TunnelSide side = TunnelSide::left; // in a tunnel
    double along = 0;                   // in a tunnel: from its first dome's pole along its axis
};

/// Whether the tubes of a course stop either side of it: from a diameter of half a course height
/// on. A smaller one lies on the joint between two courses.
bool stops_tubes(const SleeveForm& sleeve, double course_height);

/// Half-width that the tubes of course n keep clear of a sleeve: its radius in the course that
/// holds its centre, half its chord at the middle of any other that it reaches over; 0: not cut.
double laid_half_width(const SleeveForm& sleeve, const CourseLevels& levels, int n);

/// The courses that a sleeve lies in; of one that lies on a joint those under and over it.
struct SleeveCourses {
    int first = 1, last = 1;
};
SleeveCourses courses_of(const SleeveForm& sleeve, const CourseLevels& levels);

} // namespace coilwright
