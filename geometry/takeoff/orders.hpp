// What to have on site when: purchases by the stage that needs them.
#pragma once

#include "geometry/takeoff/days.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

struct OrderLine {
    std::string item, name; // code and name of the item
    double amount = 0;      // with waste, in the item's unit; of packs, what they hold
    int packs = 0;          // 0: loose
};

struct OrderGroup {
    Phase phase = Phase::trench;
    // Day (0: the first) on which its work starts; of a stage without work the day after the last
    // of all. None where the plan of days does not reach it.
    std::optional<int> calendar;
    std::optional<Date> date;
    std::vector<OrderLine> lines; // by item
};

/// The things to buy of a take-off, each when the stage that takes it starts; stages in their
/// order, those that take nothing left out, without labour. What comes in packs is bought in whole
/// ones as far as the stages up to then need them, so that the packs of all groups are those of the
/// item.
std::vector<OrderGroup> order_list(const TakeOff& take, const DayPlan& days);

} // namespace coilwright
