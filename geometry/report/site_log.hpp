// The site log: a sheet a working day, to be filled in and signed.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/takeoff/worked_out.hpp"

#include <vector>

namespace coilwright {

/// For each day of the plan: what is to be done and set, each course with the setting and the
/// height it should have and room for what was read, what is to be on site and what was used, the
/// mix, the test bag, who was there, what went otherwise, a line to sign. A day that does not fit
/// one sheet goes on on the next. Precondition: plan.sound(), `out` without diagnostics, of that
/// plan.
std::vector<Sheet> site_log(const BuildingPlan& plan, const WorkedOut& out, const PaperSize& paper,
                            const MeasureText& measure);

} // namespace coilwright
