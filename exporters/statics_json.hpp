// The engineer's report as data: what limit analysis works out, beside the findings.
#pragma once

#include "geometry/checks/check_building.hpp"

#include <string>

namespace coilwright {

/// checks.json: findings_json() with `statics` as its last key (docs/reference/schedule.md): SI,
/// forces of a dome on one radian, those of a tunnel on one metre; domes and tunnels in the
/// schedule's order, courses from the bottom up, lines of thrust from the top down; materials, and
/// the formula and source of each number. Preconditions: plan.sound(); `checked` is of that plan.
std::string checks_json(const BuildingPlan& plan, const CheckedBuilding& checked);

} // namespace coilwright
