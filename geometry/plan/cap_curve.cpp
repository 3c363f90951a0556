#include "geometry/plan/cap_curve.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

CapCurve make_cap_curve(const Profile& profile, double springline, double last_middle,
                        double course_height, double width) {
    CapCurve cap;
    cap.by_formula =
        profile.kind == ProfileKind::pointed && profile.radius - profile.half_span > width / 2;
    cap.line_z = last_middle;
    cap.line_radius = half_width(profile, last_middle - springline);
    cap.line_slope =
        (half_width(profile, last_middle - course_height - springline) - cap.line_radius) /
        course_height;
    return cap;
}

double extended_half_width(const Profile& profile, double springline, const CapCurve& cap,
                           double z) {
    const double y = z - springline;
    if (cap.by_formula) {
        const double rho = profile.radius;
        return y <= 0 ? profile.half_span
                      : std::sqrt(std::max(0.0, rho * rho - y * y)) - (rho - profile.half_span);
    }
    if (z <= cap.line_z)
        return half_width(profile, y);
    return cap.line_radius - (z - cap.line_z) * cap.line_slope;
}

int count_cap_courses(const Profile& profile, double springline, const CapCurve& cap,
                      double middle_of_next, double course_height, double width, int most) {
    int count = 0;
    while (count < most &&
           extended_half_width(profile, springline, cap, middle_of_next + count * course_height) +
                   width >=
               width / 2)
        ++count;
    return count;
}

double cap_rim(const Profile& profile, double springline, const CapCurve& cap, double width,
               double last_middle, double top, double z) {
    const double last = extended_half_width(profile, springline, cap, last_middle) + width;
    const double rim =
        std::max(extended_half_width(profile, springline, cap, top) + width, last / 2);
    return last + (rim - last) * (z - last_middle) / (top - last_middle);
}

} // namespace coilwright
