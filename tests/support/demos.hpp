// The demo designs as laid.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright::testing {

/// models/NAME: "grain-store.toml". Throws std::runtime_error with its first fault where it has
/// one.
BuildingPlan demo_plan(const std::string& name);

} // namespace coilwright::testing
