// The take-off as a workbook in which a changed price, waste or amount carries on to the totals.
#pragma once

#include "geometry/takeoff/days.hpp"
#include "geometry/takeoff/money.hpp"

#include <string>

namespace coilwright {

/// Sheets Summary, Buy (purchases and prices), Amounts (every line and how it was worked out),
/// Costs (elements by phases), Days, Courses, Rolls; in the design's unit. Throws as xlsx_bytes.
std::string take_off_xlsx(const TakeOff& take, const Costs& costs, const DayPlan& days);

} // namespace coilwright
