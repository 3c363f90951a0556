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

} // namespace coilwright
