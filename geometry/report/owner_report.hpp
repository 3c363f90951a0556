// What a building takes, for whoever pays: two pages, totals first, bars where people look.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/takeoff/worked_out.hpp"

#include <vector>

namespace coilwright {

/// Page 1: what it costs and how long it takes, what the money goes for. Page 2: the stages of the
/// work on the calendar, what to have on site when, what all of it assumes. Two sheets, whatever
/// the building: long lists are cut short and say so. Precondition: plan.sound(), `out` without
/// diagnostics.
std::vector<Sheet> owner_report(const BuildingPlan& plan, const WorkedOut& out,
                                const PaperSize& paper, const MeasureText& measure);

} // namespace coilwright
