#include "geometry/plan/sleeve_form.hpp"

#include "geometry/plan/wall_form.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

bool stops_tubes(const SleeveForm& sleeve, double course_height) {
    return sleeve.diameter >= course_height / 2 - height_tie;
}

double laid_half_width(const SleeveForm& sleeve, const CourseLevels& levels, int n) {
    if (!stops_tubes(sleeve, levels.course_height))
        return 0;
    const double radius = sleeve.diameter / 2;
    if (course_at(levels, sleeve.height) == n)
        return radius;
    const double off = std::abs(levels.course_middle(n) - sleeve.height);
    return off < radius ? std::sqrt(radius * radius - off * off) : 0;
}

SleeveCourses courses_of(const SleeveForm& sleeve, const CourseLevels& levels) {
    if (!stops_tubes(sleeve, levels.course_height)) {
        const int over = course_over_joint(levels, sleeve.height);
        return {std::max(1, over - 1), over};
    }
    const double radius = sleeve.diameter / 2;
    // A pipe that ends on a joint does not lie in the course beyond it.
    return {course_at(levels, sleeve.height - radius),
            course_at(levels, sleeve.height + radius - 2 * height_tie)};
}

} // namespace coilwright
