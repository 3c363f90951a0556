#include "geometry/drawing/tunnel_view.hpp"

#include "geometry/drawing/plan_gaps.hpp"

#include <algorithm>
#include <set>

namespace coilwright {
namespace {

constexpr double dome_shown = 0.25; // metres of a dome's ring and room that the plan shows

Vec2 left_of(Vec2 ahead) {
    return {-ahead.y(), ahead.x()};
}

/// Where the tunnel's tubes start and end along its axis.
std::pair<double, double> reach_of(const CoursePart& part) {
    double from = 1e9, to = -1e9;
    for (const Straight* straight : part.straights)
        for (const Vec2& point : {straight->start, straight->end}) {
            const double at = (point - part.tunnel->origin).dot(part.tunnel->axis());
            const double half = straight->part == StraightPart::end ? straight->width / 2 : 0;
            from = std::min(from, at - half);
            to = std::max(to, at + half);
        }
    return {from, to};
}

/// White across the wall, with its name.
void draw_sleeve(PlanCanvas& canvas, const CoursePart& part, const SleeveForm& sleeve) {
    const TunnelForm& tunnel = *part.tunnel;
    const Vec2 out = along(sleeve.bearing), aside = left_of(out) * (sleeve.diameter / 2);
    const double face = inner_half_width(tunnel, part.course->middle);
    const Vec2 inside = sleeve.origin + out * face, outside = inside + out * tunnel.width;
    canvas.outline(
        {inside - aside,
         {{outside - aside, 0}, {outside + aside, 0}, {inside + aside, 0}, {inside - aside, 0}}},
        {1}, pens::seen);
    canvas.name_between(sleeve.id, canvas.frame().of(inside), canvas.frame().of(outside), out);
}

} // namespace

GroundBox tunnel_extent(const BuildingPlan&, const CoursePart& part) {
    const TunnelForm& tunnel = *part.tunnel;
    const auto [from, to] = reach_of(part);
    const double half = outer_half_width(tunnel, part.course->middle);
    GroundBox box{{1e9, 1e9}, {-1e9, -1e9}};
    for (const double x : {from - tunnel.width - dome_shown,
                           to + (tunnel.to.empty() ? 0.0 : tunnel.width + dome_shown)})
        for (const double y : {half, -half}) {
            const Vec2 point = tunnel.axis() * x + left_of(tunnel.axis()) * y;
            box.low = box.low.cwiseMin(point);
            box.high = box.high.cwiseMax(point);
        }
    return box;
}

void add_tunnel_plan(Sheet& sheet, Placer& placer, const BuildingPlan& plan, const CoursePart& part,
                     const PlanFrame& given) {
    const TunnelForm& tunnel = *part.tunnel;
    PlanFrame frame = given;
    frame.origin = tunnel.origin;
    PlanCanvas canvas(sheet, placer, frame);
    const Schedule& schedule = plan.schedule;
    canvas.boundary(part.course->wall, pens::fine);
    std::vector<StraightShape> shapes;
    for (const Straight* straight : part.straights)
        for (StraightShape& shape : straight_shapes(schedule.building, *part.course, *straight))
            shapes.push_back(std::move(shape));
    for (const StraightShape& shape : shapes)
        canvas.outline(shape.outline, inks::tube, pens::cut);

    for (const SleevePlan* sleeve : sleeves_of(plan, part))
        draw_sleeve(canvas, part, sleeve->form);

    const auto [from, to] = reach_of(part);
    const auto along_axis = [&](double x, double y) {
        return frame.of(tunnel.origin + tunnel.axis() * x + left_of(tunnel.axis()) * y);
    };
    const PaperBox& box = placer.frame();
    const double over = 5 / frame.mm_per_metre;
    const auto draw_axis = [&](double start, double end) {
        for (const Segment& axis : clipped({along_axis(start, 0), along_axis(end, 0)},
                                           {box.left, box.bottom}, {box.right, box.top}))
            canvas.line(axis.from, axis.to, pens::axis);
    };
    const double first = from - tunnel.width - dome_shown;
    if (part.course->number > tunnel.side_courses) { // the crown's tubes lie on the axis
        draw_axis(first, from);
        draw_axis(to, to + over);
    } else {
        draw_axis(first, to + over);
    }
    add_north(sheet, placer);
    for (const StraightShape& shape : shapes)
        name_straight_tube(canvas, shape);

    // Openings by their place in the wall, domes by their side of the axis.
    const double half = outer_half_width(tunnel, part.course->middle);
    std::set<std::string> stops;
    for (const Straight* straight : part.straights) {
        stops.insert(straight->start_by);
        stops.insert(straight->end_by);
    }
    for (const OpeningPlan& opening : schedule.openings) {
        const OpeningForm& form = opening.form;
        if (form.in != tunnel.id || stops.count(form.id) == 0)
            continue;
        draw_lintel(canvas, schedule, form, part.course->number);
        const Vec2 origin = frame.of(form.origin);
        const bool in_end = form.axis.dot(tunnel.axis()) > 0.5;
        const double inside = in_end ? tunnel.reach - tunnel.width : half - tunnel.width;
        const double outside = in_end ? tunnel.reach : half;
        canvas.name_between(form.id, origin + form.axis * inside * frame.mm_per_metre,
                            origin + form.axis * outside * frame.mm_per_metre, form.axis);
    }
    const auto name_dome = [&](const std::string& id, double x, double way) {
        std::vector<TextItem> candidates;
        for (const Vec2& place : places_about(along_axis(x, 0), tunnel.axis() * way, 2, 24, pi))
            candidates.push_back(PlanCanvas::centred(place, id, sizes::body, true));
        canvas.name(candidates);
    };
    if (stops.count(tunnel.from) != 0)
        name_dome(tunnel.from, from - tunnel.width, -1);
    if (!tunnel.to.empty() && stops.count(tunnel.to) != 0)
        name_dome(tunnel.to, to + tunnel.width, 1);
    canvas.write_labels();
}

} // namespace coilwright
