#include "geometry/plan/course_levels.hpp"

#include <iterator>

namespace coilwright {

double CourseLevels::course_bottom(int n) const {
    const auto above = measured_tops.lower_bound(n);
    if (above == measured_tops.begin())
        return (n - 1 - foundation) * course_height;
    const auto& [number, top] = *std::prev(above);
    return top + (n - 1 - number) * course_height;
}

int course_at(const CourseLevels& levels, double z) {
    int n = 1;
    while (n < most_courses && levels.course_bottom(n + 1) <= z + height_tie)
        ++n;
    return n;
}

int course_from(const CourseLevels& levels, double z) {
    int n = 1;
    while (n < most_courses && levels.course_bottom(n) < z - height_tie)
        ++n;
    return n;
}

double joint_from(const CourseLevels& levels, double z) {
    return levels.course_bottom(course_from(levels, z));
}

int course_over_joint(const CourseLevels& levels, double z) {
    const int n = course_at(levels, z);
    return z - levels.course_bottom(n) < levels.course_bottom(n + 1) - z - height_tie ? n : n + 1;
}

double nearest_joint(const CourseLevels& levels, double z) {
    return levels.course_bottom(course_over_joint(levels, z));
}

} // namespace coilwright
