// The take-off with its costs and days as JSON (docs/reference/take-off.md).
#pragma once

#include "geometry/takeoff/days.hpp"
#include "geometry/takeoff/money.hpp"

#include <string>

namespace coilwright {

/// SI units; amounts rounded to 1e-6. `costs` with no priced item is written as null.
std::string take_off_json(const TakeOff& take, const Costs& costs, const DayPlan& days);

/// One row a line of the take-off, then one a thing to buy; SI, RFC 4180.
std::string take_off_csv(const TakeOff& take, const Costs& costs);

/// The table for the terminal, in the design's unit.
std::string take_off_table(const TakeOff& take, const Costs& costs, const DayPlan& days);

} // namespace coilwright
