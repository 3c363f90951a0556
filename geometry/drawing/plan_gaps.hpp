// What fills the gaps of a ring in plan, and the names of what makes them.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/plan_canvas.hpp"

namespace coilwright {

/// Fans, lintels and backs of niches in the gaps of a ring, hatched; sleeves through it.
void draw_gaps(PlanCanvas& canvas, const BuildingPlan& plan, const CoursePart& part,
               const Ring& ring);

/// The lintel of an opening with its name, where it lies in a course; false where none does.
bool draw_lintel(PlanCanvas& canvas, const Schedule& schedule, const OpeningForm& form, int course);

/// The wedges of a ring, between the cuts that stop them.
void draw_wedges(PlanCanvas& canvas, const DomeForm& dome, const Ring& ring);

/// Names the openings, tunnels, piers, domes and sleeves that a dome's course meets.
void name_elements(PlanCanvas& canvas, const BuildingPlan& plan, const CoursePart& part);

/// The name of a tube of a straight run, in it where it can stand.
void name_straight_tube(PlanCanvas& canvas, const StraightShape& shape);

} // namespace coilwright
