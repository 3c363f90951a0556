// The building as a building: IFC for the architect's and the engineer's programs.
#pragma once

#include "exporters/ifc_file.hpp"
#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/solid_model.hpp"

#include <string>

namespace coilwright {

/// A STEP file of project, site, building and storey. Of each dome and tunnel the courses below the
/// floor are a footing, those up to the springline a wall, those above a roof; of each buttress a
/// pier; these have no body, their courses have: the bodies of `courses`, united by course.
/// Lintels, openings with the frames of doors and windows, sleeves, the floor, and a space a room
/// of the schedule. Metres, x east, y north, z up. Which attribute holds what:
/// docs/reference/formats.md. The same design gives the same GlobalIds whatever else changes in it.
/// Preconditions: plan.sound(), `courses` is the courses model of its schedule; throws
/// std::logic_error where a part of it belongs to no element.
std::string ifc_text(const BuildingPlan& plan, const SolidModel& courses, IfcSchema schema);

} // namespace coilwright
