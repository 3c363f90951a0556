#include "geometry/drawing/plan_box.hpp"

#include <algorithm>

namespace coilwright {

PlanBox fit_plan(const Drafting& drafting, const GroundBox& ground, const SheetStyle& style) {
    const double least_height = style.half ? 40 : 70, least_width = style.half ? 70 : 80; // mm
    constexpr double names_room = 5;  // mm more than the rim at the left and right, for names
    constexpr double least_side = 62; // mm of figures beside the plan
    const PaperBox frame = frame_of(drafting.paper.width, drafting.paper.height);
    const double widest = style.wide ? frame.width() : frame.width() - 5 - least_side;
    const double rim = style.plan_rim, side_rim = rim + names_room;
    const Vec2 size = ground.size();
    PlanBox plan;
    plan.ground = ground;
    plan.scale = largest_scale(size.x(), size.y(), widest - 2 * side_rim, style.plan_most - 2 * rim,
                               drafting.unit());
    plan.height = std::max(least_height, plan.scale.on_paper(size.y()) + 2 * rim);
    plan.width =
        style.wide ? widest : std::max(least_width, plan.scale.on_paper(size.x()) + 2 * side_rim);
    return plan;
}

PlanFrame frame_in(const PaperBox& box, const PlanBox& plan) {
    const double scale = plan.scale.on_paper(1);
    const PaperBox area{box.left, box.top - plan.height, box.left + plan.width, box.top};
    return {area.centre() - plan.ground.centre() * scale, scale, {0, 0}};
}

} // namespace coilwright
