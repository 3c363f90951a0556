// The schedule as tables for the terminal, in the design's unit.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright {

/// The building's name, what was fitted, one line a course and dome (number, top, compass, outside
/// radius, chain, step-in, runs, tubes, cuts, fill), one line a cut, the totals and the building on
/// the ground.
std::string schedule_table(const BuildingPlan& plan);

/// Floor, footprint and ground course of the building, one line each.
std::string ground_text(const Schedule& schedule, const std::string& indent);

} // namespace coilwright
