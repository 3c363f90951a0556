// The whole building on the ground: its floor, its footprint and what its trench is dug for.
#pragma once

#include "geometry/plan/region.hpp"

namespace coilwright {

struct BuildingForm;

/// Exact regions of arcs and lines; undecided where no arithmetic could tell.
struct GroundPlan {
    Region floor;         // rooms at the finished floor, between bag faces; doorways are not in it
    Region footprint;     // all within the outside faces at the finished floor, buttresses too
    Region ground_course; // the wall of course 1, at its middle: the outline of the trench
};

/// A dome of 9 ft in a wall of 15 in: floor pi 4.5^2 = 63.62 sq ft, footprint pi 5.75^2 = 103.87,
/// the ground course the ring between, 40.25. `decide`: as for lay(). Precondition: a dome at
/// least, laid out without a fault.
GroundPlan plan_ground(const BuildingForm& building, const DecideRegion& decide);

/// Length of the boundary about the outside of a region, and of that about its holes.
double outer_perimeter(const Region& region);
double hole_perimeter(const Region& region);

} // namespace coilwright
