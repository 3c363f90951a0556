// The schedule as a workbook, for the office.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>

namespace coilwright {

/// Sheets Courses (rings and straights, with sums), Tubes, Cuts; settings in inches or millimetres,
/// tube in feet or metres. Precondition: plan.sound(). Throws as xlsx_bytes.
std::string schedule_xlsx(const BuildingPlan& plan);

} // namespace coilwright
