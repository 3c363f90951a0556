// The schedule as a flat table: one row a tube, RFC 4180, SI.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright {

std::string schedule_csv(const BuildingPlan& plan);

} // namespace coilwright
