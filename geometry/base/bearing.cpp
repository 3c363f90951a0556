#include "geometry/base/bearing.hpp"

#include <cmath>

namespace coilwright {

PlanAngle to_angle(Bearing bearing) {
    return {(90 - bearing.degrees) * radians_per_degree};
}

Bearing to_bearing(PlanAngle angle) {
    return {turned_into_circle(90 - angle.radians / radians_per_degree)};
}

double turned_into_circle(double degrees) {
    double reduced = std::fmod(degrees, 360.0);
    if (reduced < 0)
        reduced += 360;
    return 360 - reduced < 1e-12 ? 0.0 : reduced;
}

double clockwise_degrees(Bearing from, Bearing to) {
    return turned_into_circle(to.degrees - from.degrees);
}

Bearing turned(Bearing bearing, double degrees) {
    return {turned_into_circle(bearing.degrees + degrees)};
}

Vec2 along(Bearing bearing) {
    const double b = bearing.degrees * radians_per_degree;
    return {std::sin(b), std::cos(b)};
}

Vec2 right_of(Bearing bearing) {
    return along({bearing.degrees + 90});
}

} // namespace coilwright
