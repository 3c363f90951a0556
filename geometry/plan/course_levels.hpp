// The heights of the courses, which all walls of a building share.
#pragma once

#include <map>

namespace coilwright {

/// z is the height above the finished floor, metres; courses count from 1 at the bottom of the
/// trench.
struct CourseLevels {
    double course_height = 0; // t
    int foundation = 0;       // F, courses below the floor
    // Tops of courses as measured on site, by number; later courses stand on them.
    std::map<int, double> measured_tops;

    double bottom() const { return -foundation * course_height; }
    double course_bottom(int n) const;
    double course_middle(int n) const { return course_bottom(n) + course_height / 2; }
};

} // namespace coilwright
