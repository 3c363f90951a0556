// What one dome lays in one course, seen from above, to scale, north up.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/plan_canvas.hpp"

namespace coilwright {

struct CoursePlan {
    const BuildingPlan& plan;
    const CoursePart& part;            // a dome's
    const CoursePart* below = nullptr; // the same dome in the course below
    bool lettered = true;              // letters at the cuts and names of the tubes
    std::string datum_label;           // what to write at the datum line's end
    std::string arm_text;              // the compass setting, written along the arm; may be empty
};

/// A step-in that is less wide on paper does not show, mm.
inline constexpr double least_step_shown = 1.0;

/// An upright rectangle of the ground, metres east and north of the pole.
struct GroundBox {
    Vec2 low{0, 0}, high{0, 0};
    Vec2 size() const { return high - low; }
    Vec2 centre() const { return (low + high) / 2; }
};
/// What the plan must show: the dome's rings, its piers and the beginnings of its tunnels.
GroundBox plan_extent(const BuildingPlan& plan, const CoursePart& part);

/// Draws the course with the pole at frame.pole: tubes in light grey with their joints, fans,
/// lintels and backs of niches hatched, the wall of other domes and tunnels in thin lines as far as
/// the placer's frame shows them, the joints of the course below as dashed ticks, the datum line
/// and mark, what stops the ring named, north in the upper left corner of the placer's frame. Each
/// cut's letter stands in a circle with a leader to its place on the inside face.
void add_course_plan(Sheet& sheet, Placer& placer, const CoursePlan& plan, const PlanFrame& frame);

} // namespace coilwright
