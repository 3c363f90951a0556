// The box that holds a plan on a sheet: at the largest scale for which there is room, and no larger
// than that scale needs.
#pragma once

#include "geometry/drawing/plan_view.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/drawing/sheet_parts.hpp"

namespace coilwright {

struct PlanBox {
    Scale scale;
    GroundBox ground;
    double width = 0, height = 0; // mm
};

PlanBox fit_plan(const Drafting& drafting, const GroundBox& ground, const SheetStyle& style);
/// Where the pole lies when what must be shown stands in the middle of a box.
PlanFrame frame_in(const PaperBox& box, const PlanBox& plan);

} // namespace coilwright
