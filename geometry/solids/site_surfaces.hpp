// The floor and the ground of a building, as regions in plan and as meshes.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/mesh.hpp"

namespace coilwright {

/// Width of the ground shown about the building, metres.
inline constexpr double ground_margin = 3;

/// The finished floor at z = 0, from bag face to bag face: the rooms, less the walls that stand or
/// end at the floor. In a tunnel it stops at the buried ring of its dome. A dome alone of inside
/// radius R: pi R^2.
PlanExpression floor_expression(const BuildingForm& building);

/// The ground at a height: at least `margin` wide about the outside faces, round about domes (by
/// the reach of the farthest buttress) and the ends of tunnels, less the building's footprint
/// there. A dome alone of outside radius R: pi ((R + margin)^2 - R^2).
PlanExpression ground_expression(const BuildingForm& building, double level,
                                 double margin = ground_margin);

/// A region at a height, seen from above; arcs as chords within the tolerance. With a depth it is
/// the top of a closed slab. Empty where the region has no loop or touches itself.
Mesh level_mesh(const Region& region, double z, double depth, double tolerance);

} // namespace coilwright
