// What the trench of the first course is dug for, element by element.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// The first course of a dome, a tunnel or a pier: all that it lays side by side, and its trench.
struct Footing {
    std::string element;
    double length = 0; // along the middle of its whole width, m
    double width = 0;  // of all its tubes side by side: both wythes, all tubes of a pier
    double trench = 0; // width of the trench: that and trench_room
    double trench_area() const { return length * trench; }
};

/// By element, in the order of ids. A closed ring of two wythes is one annulus: its length times
/// its trench's width is that annulus' area, exactly. The walls of a tunnel stand apart and add up.
std::vector<Footing> footings(const BuildingPlan& plan);

} // namespace coilwright
