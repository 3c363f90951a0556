#include "geometry/plan/sleeve_form.hpp"

#include "geometry/plan/wall_form.hpp"

#include <cmath>

namespace coilwright {

bool stops_tubes(const SleeveForm& sleeve, double course_height) {
    return sleeve.diameter >= course_height / 2 - height_tie;
}

double laid_half_width(const SleeveForm& sleeve, double course_bottom, double course_middle,
                       double course_top) {
    if (!stops_tubes(sleeve, course_top - course_bottom))
        return 0;
    const double radius = sleeve.diameter / 2;
    if (sleeve.height >= course_bottom - height_tie && sleeve.height < course_top - height_tie)
        return radius;
    const double off = std::abs(course_middle - sleeve.height);
    return off < radius ? std::sqrt(radius * radius - off * off) : 0;
}

} // namespace coilwright
