// All that a works file says about a laid building: amounts, costs, days.
#pragma once

#include "geometry/takeoff/days.hpp"
#include "geometry/takeoff/money.hpp"

namespace coilwright {

struct WorkedOut {
    Works works;
    TakeOff take; // with the item "labour"
    Costs costs;
    DayPlan days;
};

/// Where `take.diagnostics` is not empty, costs and days are left out; faults of the prices stand
/// in `costs.diagnostics`. Precondition: plan.sound(), the works file without fault.
WorkedOut work_everything_out(const BuildingPlan& plan, const Works& works,
                              const DecideRegion& decide = {});

} // namespace coilwright
