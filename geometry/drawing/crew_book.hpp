// The crew book: cover, then one sheet per course, and the compass strip.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/plan/plan_building.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// Letter (215.9 x 279.4 mm) and A4 (210 x 297 mm).
PaperSize letter_paper();
PaperSize a4_paper();

/// The crew's sheets in the order of work. Of the findings, those that fail are counted on the
/// cover and told before the start, with the advice that the crew can do something about.
/// Precondition: plan.sound().
std::vector<Sheet> crew_book(const BuildingPlan& plan, const PaperSize& paper,
                             const MeasureText& measure, const std::vector<Finding>& findings = {});

/// The same, with findings that are still being worked out: asked for, once, when the sheets of the
/// courses are set, on all processors. `measure` must serve several threads.
using AskFindings = std::function<const std::vector<Finding>&()>;
std::vector<Sheet> crew_book(const BuildingPlan& plan, const PaperSize& paper,
                             const MeasureText& measure, const AskFindings& ask);

/// Distances to mark on the compass arm, full size, tiled with match marks.
std::vector<Sheet> compass_strip(const BuildingPlan& plan, const PaperSize& paper,
                                 const MeasureText& measure);

} // namespace coilwright
