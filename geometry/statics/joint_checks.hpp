// What a thrust line does to the joints it passes: pressure, sliding, and the ground under them.
#pragma once

#include "geometry/statics/dome_slice.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Pressure in a joint that carries no tension, taken even over the part of the contact that lies
/// about the thrust (Meyerhof 1953): N/(d - 2 |e|), Pa, of a normal force in N per metre. 30 kN/m
/// on 0.25 m, 0.05 off its middle -> 200 kPa. Without limit where the thrust leaves the contact.
double contact_pressure(double normal, double contact, double offset);

/// The joint under a course.
struct JointCheck {
    int course = 0;
    double normal = 0;          // N per metre of the circle (or the tunnel) at its point of action
    double thrust = 0;          // horizontal, the same
    double reach = 0;           // 1: at an end of the contact
    double pressure = 0;        // Pa; under course 1: on the ground
    double strength = 0;        // Pa, of the weaker of the two fills; under course 1 of its own
    double friction_needed = 0; // |shear| / normal
    double hoop = 0; // of the course above it, N; compression positive, wire's pull negative
    double hoop_pressure = 0; // Pa, of compression on the tube's section
};

/// The joints of a dome's slice, from course `first` up. A joint beside a gap carries on what the
/// gap leaves of the strip. The joints within a cap are left out. Precondition: `line` stands and
/// is of dome_slice(courses, what).
std::vector<JointCheck> check_joints(const std::vector<WallCourse>& courses, const DomeSlice& what,
                                     const ThrustLine& line);

/// A stretch of wall between two gaps of one course, going clockwise.
struct PierCheck {
    int course = 0;
    std::string from, to; // ids; equal where there is one gap
    double length = 0;    // along the centreline
    double pressure =
        0; // Pa: its own load and half of that over each gap beside it, on its contact
    double strength = 0;
};

/// For each pair of neighbours that stand in one course, the course in which the pier between them
/// is pressed the most; by course, then ids. Loads as if they came down plumb: the greatest of any
/// centred share is in check_joints.
std::vector<PierCheck> check_piers(const std::vector<WallCourse>& courses);

} // namespace coilwright
