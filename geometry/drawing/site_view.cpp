#include "geometry/drawing/site_view.hpp"

#include "geometry/drawing/key_plan.hpp"
#include "geometry/drawing/plan_canvas.hpp"
#include "geometry/drawing/scale.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

/// The lowest course above the floor, which shows where doors are.
const Course& first_above_floor(const Schedule& schedule) {
    const auto found = std::find_if(schedule.courses.begin(), schedule.courses.end(),
                                    [](const Course& course) { return !course.below_floor; });
    return found == schedule.courses.end() ? schedule.courses.front() : *found;
}

FillItem region_fill(const Region& region, const PlanFrame& frame) {
    FillItem fill;
    fill.ink = inks::tube;
    for (const BoundaryLoop& loop : region.loops) {
        FillItem::Loop made{frame.of(loop.edges.front().from), {}};
        for (const BoundaryEdge& edge : loop.edges)
            made.edges.push_back({frame.of(edge.to), edge.bulge});
        fill.loops.push_back(std::move(made));
    }
    return fill;
}

std::vector<TextItem> names_about(Vec2 point, Vec2 outward, const std::string& text, double from,
                                  double to, bool bold) {
    std::vector<TextItem> candidates;
    for (const double size : {bold ? sizes::strong : sizes::small, sizes::small})
        for (const Vec2& place : places_about(point, outward, from, to, pi))
            candidates.push_back(PlanCanvas::centred(place, text, size, bold));
    return candidates;
}

} // namespace

void add_site(Sheet& sheet, const PaperBox& box, const Drafting& drafting) {
    const Schedule& schedule = drafting.schedule();
    const BuildingForm& building = schedule.building;
    const GroundBounds ground = ground_bounds(building);
    const Vec2 size = ground.high - ground.low;
    constexpr double caption = 6, rim = 11;
    const PaperBox room{box.left, box.bottom, box.right, box.top - caption};
    const Scale scale = largest_scale(size.x(), size.y(), room.width() - 2 * rim,
                                      room.height() - 2 * rim, drafting.unit());
    const Course& course = first_above_floor(schedule);
    add_text(sheet, {box.left, box.top - 4.2},
             "Course " + std::to_string(course.number) + " from above, " + scale.text,
             sizes::small);
    Placer placer(room, drafting.measure);
    const PlanFrame frame{room.centre(), scale.on_paper(1), (ground.low + ground.high) / 2};
    PlanCanvas canvas(sheet, placer, frame);
    sheet.items.push_back(region_fill(course.wall, frame));
    canvas.boundary(course.wall, pens::seen);

    for (const DomeForm& dome : building.domes) {
        const Vec2 pole = frame.of(dome.at), ahead = along(dome.datum);
        for (const Vec2& arm : {Vec2(2, 0), Vec2(0, 2)})
            canvas.line(pole - arm, pole + arm, pens::seen);
        const double outside = outside_radius(dome, course.middle) * frame.mm_per_metre;
        canvas.line(pole, pole + ahead * (outside + 4), pens::axis);
    }
    add_north(sheet, placer);
    for (const DomeForm& dome : building.domes)
        canvas.name(names_about(frame.of(dome.at), {0, 1}, dome.id, 5, 60, true));
    for (const TunnelForm& tunnel : building.tunnels) {
        const Vec2 end =
            tunnel.origin + tunnel.axis() * (tunnel.to.empty() ? tunnel.reach : tunnel.reach / 2);
        const Vec2 outward = tunnel.to.empty() ? tunnel.axis() : right_of(tunnel.bearing);
        canvas.led_name(names_about(frame.of(end), outward, tunnel.id, 4, 40, true), frame.of(end),
                        5);
    }
    for (const ButtressForm& pier : building.buttresses) {
        if (pier.reveal) // named as its opening
            continue;
        const Vec2 end = frame.of(pier.origin + pier.axis() * outer_face(pier, course.middle));
        canvas.led_name(names_about(end, pier.axis(), pier.id, 3, 20, false), end, 4);
    }
    for (const OpeningPlan& opening : schedule.openings) {
        const OpeningForm& form = opening.form;
        const Vec2 face = frame.of(form.origin + form.axis * opening.frame_band_end);
        canvas.led_name(names_about(face, form.axis, form.id, 4, 24, false), face, 4);
    }
    canvas.write_labels();
}

} // namespace coilwright
