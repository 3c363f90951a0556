// Designs written as text, laid for the take-off, and what it takes of one thing.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/takeoff/take_off.hpp"

#include <string>

namespace coilwright::testing {

/// Laid; the design must be sound.
BuildingPlan planned(const std::string& toml);
/// Of an item of that code; 0 where there is none.
double amount(const TakeOff& take, const std::string& code);
/// Coats on both sides: two outside, one inside.
Works plastered_works();

} // namespace coilwright::testing
