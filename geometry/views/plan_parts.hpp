// What plans share: chains of dimensions, names of rooms.
#pragma once

#include "geometry/views/plan_views.hpp"

namespace coilwright {

/// The region in doubles; empty where they cannot tell.
Region decided_region(const PlanExpression& expression);

/// A chain of dimensions between places along a direction, through the point `at`.
void add_chain(View& view, std::vector<double> places, Vec2 along, Vec2 at, int row,
               DisplayUnit unit, const std::string& of);

/// Chains below and to the left: from the edges of what is drawn to the poles, and overall.
void add_pole_chains(View& view, const BuildingForm& building, DisplayUnit unit);

/// Sleeves through the wall, dashed, with diameter and level: those below the floor, or the others.
void add_sleeves(View& view, const BuildingPlan& plan, bool below_floor);
/// Each dome's id, inside diameter and, if wanted, clear floor beside its pole.
void add_dome_names(View& view, const BuildingPlan& plan, bool floors);

} // namespace coilwright
