#include "geometry/statics/stem_stability.hpp"

#include <cassert>

namespace coilwright {

StemStability stem_stability(const std::vector<WallCourse>& courses, int springline_course,
                             const JointThrust& above, double ground_friction) {
    assert(springline_course > 1);
    const double toe = courses.front().contact_outer, bottom = courses.front().bottom;
    StemStability result;
    double stands = above.normal * (toe - above.point.x());
    for (int n = 1; n < springline_course; ++n) {
        const WallCourse& course = courses[static_cast<std::size_t>(n - 1)];
        result.weight += course.weight;
        stands += course.weight * (toe - course.mass_radius);
    }
    result.sliding = result.overturning = unlimited;
    if (above.thrust() <= 0)
        return result;
    result.sliding = ground_friction * (result.weight + above.normal) / above.thrust();
    result.overturning = stands / (above.thrust() * (above.point.y() - bottom));
    return result;
}

} // namespace coilwright
