// The heights of the courses, which all walls of a building share.
#pragma once

#include <map>

namespace coilwright {

/// No building has more courses; forms stop counting there and check_layout refuses the design.
inline constexpr int most_courses = 400;

/// Heights nearer to each other than this are equal, metres.
inline constexpr double height_tie = 1e-6;

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

/// The course that holds a height, its bottom included; 1 below all, the highest of any building
/// above them.
int course_at(const CourseLevels& levels, double z);

/// The lowest course whose bottom lies at a height or above it, and that joint.
int course_from(const CourseLevels& levels, double z);
double joint_from(const CourseLevels& levels, double z);

/// The course whose bottom is the joint nearest to a height; of two as near the upper one.
int course_over_joint(const CourseLevels& levels, double z);
/// That joint.
double nearest_joint(const CourseLevels& levels, double z);

} // namespace coilwright
