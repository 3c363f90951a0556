// Outlines for the IFC writer.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/plan/region.hpp"

#include <vector>

namespace coilwright {

/// The hole's outline seen along its axis, u to the left and z up, anticlockwise; curves as chords.
std::vector<Vec2> opening_outline(const OpeningForm& form);

/// How far from its origin along its axis an opening's hole begins and ends.
struct HoleReach {
    double from = 0, to = 0;
};
HoleReach hole_reach(const OpeningPlan& opening, const Schedule& schedule);

/// One connected piece of a plan region as polygons, arcs as chords within 0.5 mm.
struct PlanFace {
    std::vector<Vec2> outline;
    std::vector<std::vector<Vec2>> holes; // clockwise
};
std::vector<PlanFace> faces_of(const Region& region);

/// How far from its origin along its bearing a sleeve runs, from plaster to plaster at its height.
HoleReach sleeve_reach(const SleeveForm& sleeve, const BuildingPlan& plan);
/// A circle about (0, 0) as a polygon of 24 sides, anticlockwise.
std::vector<Vec2> circle_outline(double radius);

/// Signed area of a polygon, positive anticlockwise.
double polygon_area(const std::vector<Vec2>& polygon);

} // namespace coilwright
