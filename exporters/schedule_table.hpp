// The schedule as a table for the terminal, in the design's unit.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright {

/// One line a course: number, height, compass, chain, step-in, runs, tubes, cuts, fill.
std::string schedule_table(const BuildingPlan& plan);

} // namespace coilwright
