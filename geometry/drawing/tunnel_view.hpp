// What one tunnel lays in one course, seen from above, to scale, north up.
#pragma once

#include "geometry/drawing/plan_view.hpp"

namespace coilwright {

/// What the plan must show of a tunnel, metres east and north of the pole of its first dome.
GroundBox tunnel_extent(const BuildingPlan& plan, const CoursePart& part);

/// Draws the tunnel's tubes with their names, its axis, and the wall of the domes in thin lines as
/// far as the placer's frame shows it. Openings, domes and the axis are named. frame.pole is the
/// pole of the dome that the tunnel starts from.
void add_tunnel_plan(Sheet& sheet, Placer& placer, const BuildingPlan& plan, const CoursePart& part,
                     const PlanFrame& frame);

} // namespace coilwright
