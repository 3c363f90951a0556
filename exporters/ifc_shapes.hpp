// Outlines for the IFC writer.
#pragma once

#include "geometry/plan/region.hpp"
#include "geometry/plan/schedule.hpp"
#include "geometry/solids/mesh.hpp"

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

/// The body that a chain from the axis down to the floor makes about a vertical axis (room.hpp).
Mesh revolved_mesh(const std::vector<Vec2>& chain, const Vec2& at, int around);

/// Signed area of a polygon, positive anticlockwise.
double polygon_area(const std::vector<Vec2>& polygon);

} // namespace coilwright
