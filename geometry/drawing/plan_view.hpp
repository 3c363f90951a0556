// One course of one dome seen from above, to scale, north up.
#pragma once

#include "geometry/drawing/placer.hpp"
#include "geometry/drawing/ring_shapes.hpp"
#include "geometry/plan/plan_building.hpp"

namespace coilwright {

struct CoursePlan {
    const Schedule& schedule;
    const DomeForm& dome;
    const Course& course;
    const Ring& ring;
    const Ring* below = nullptr; // the same dome's ring of the course below
    bool lettered = true;        // letters at the cuts and names of the tubes
    std::string datum_label;     // what to write at the datum line's end
    std::string arm_text;        // the compass setting, written along the arm; may be empty
};

/// Draws the course with the pole at frame.pole: tubes in light grey with their joints, the joints
/// of the course below as dashed ticks, the datum line and mark, openings named, north in the upper
/// left corner of the placer's frame. Each cut's letter stands in a circle with a leader to its
/// place on the inside face.
void add_course_plan(Sheet& sheet, Placer& placer, const CoursePlan& plan, const PlanFrame& frame);

/// North, pointing up, in the upper left corner.
void add_north(Sheet& sheet, Placer& placer);

} // namespace coilwright
