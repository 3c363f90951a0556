// Directions in plan. A bearing and a mathematical angle turn opposite ways from different zeros;
// they are two types so that no one can hand one over for the other.
#pragma once

#include "geometry/base/vec.hpp"

namespace coilwright {

/// A direction in degrees clockwise from north, seen from above. North 0, east 90.
struct Bearing {
    double degrees = 0;
};

/// A direction in radians anticlockwise from east (the x axis).
struct PlanAngle {
    double radians = 0;
};

/// The same direction as a mathematical angle, not reduced: bearing 150 -> -pi/3.
PlanAngle to_angle(Bearing bearing);
/// The same direction as a bearing in [0, 360): angle 0 -> 90.
Bearing to_bearing(PlanAngle angle);

/// Degrees in [0, 360): 370 -> 10, -30 -> 330. Values within 1e-12 of 360 give 0.
double turned_into_circle(double degrees);
/// Degrees to turn clockwise from one bearing to another, in [0, 360): from 350 to 10 -> 20.
double clockwise_degrees(Bearing from, Bearing to);

/// The bearing that lies `degrees` clockwise of another, in [0, 360).
Bearing turned(Bearing bearing, double degrees);

/// Unit vector (east, north) along a bearing: 90 -> (1, 0).
Vec2 along(Bearing bearing);
/// Unit vector to the right of a bearing for someone who faces along it: bearing 0 -> (1, 0).
Vec2 right_of(Bearing bearing);

inline constexpr double pi = 3.14159265358979323846;
inline constexpr double radians_per_degree = pi / 180;

} // namespace coilwright
