#include "geometry/plan/section.hpp"

#include "geometry/base/bearing.hpp"

namespace coilwright {

double stadium_width(double lay_flat, double course_height) {
    return lay_flat - (pi / 2 - 1) * course_height;
}

double stadium_area(double width, double course_height) {
    return (width - course_height) * course_height + pi * course_height * course_height / 4;
}

double tamped_width(const TubeType& tube, double course_height) {
    return tube.tamped_width ? *tube.tamped_width : stadium_width(tube.lay_flat, course_height);
}

} // namespace coilwright
