#include "geometry/drawing/ring_shapes.hpp"
#include "geometry/views/detail_parts.hpp"
#include "geometry/views/details.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr double least_upstand = 0.150; // m above the finished plaster, common practice

View curb_detail(const BuildingPlan& plan, const DomeForm& dome) {
    const Schedule& schedule = plan.schedule;
    View view = start_detail("curb", "Curb of the skylight of " + dome.id);
    const int last = dome.last_ring, top_course = last + dome.curb_courses;
    add_rings(view, plan, dome, last - 2, top_course);
    const Ring& seat = *first_ring(schedule, dome.id, last);
    const Course& seat_course = schedule.courses[static_cast<std::size_t>(last) - 1];
    const double t = schedule.course_height, r = dome.last_ring_radius, top = dome.top();
    for (int n = last - 2; n < top_course; ++n) {
        const Ring *below = first_ring(schedule, dome.id, n),
                   *above = first_ring(schedule, dome.id, n + 1);
        if (below && above)
            add_wire(view, plan, *below, *above,
                     schedule.courses[static_cast<std::size_t>(n) - 1].top);
    }
    add_whole_circle(view, LineRole::cut, {seat.inside_radius + t / 2 + 0.02, seat_course.top},
                     0.012);
    const double finished = top + plan.design.finish.outside_plaster;
    const double upstand = finished + least_upstand;
    constexpr double board = 0.038;
    const Vec2 low(r + t / 2, top);
    view.paths.push_back({LineRole::glazing,
                          {low,
                           {{{low.x() + board, top}, 0},
                            {{low.x() + board, upstand}, 0},
                            {{low.x(), upstand}, 0},
                            {low, 0}}}});
    add_segment(view, LineRole::glazing, {low.x() - 0.25, upstand + 0.05},
                {low.x() + board + 0.05, upstand});
    add_heights_left(view, {seat_course.bottom, seat_course.top, top, finished, upstand}, r, 0,
                     schedule.unit, "dome." + dome.id + ".curb");
    add_widths_above(view, {r, r + dome.width}, upstand + 0.05, 0, schedule.unit,
                     "tube." + dome.tube + ".width");
    view.notes.push_back({"hole " + length_text(2 * r, schedule.unit) + " across",
                          {r, top - t / 2},
                          {-1, 0.2},
                          4,
                          false,
                          true,
                          true});
    view.notes.push_back({"closed hoop on course " + std::to_string(last),
                          {seat.inside_radius + t / 2 + 0.02, seat_course.top},
                          {-1, -0.6},
                          4,
                          false,
                          true,
                          true});
    view.notes.push_back({"glazing upstand, at least",
                          {low.x() + board, (finished + upstand) / 2},
                          {1, 0.5},
                          4,
                          false,
                          true,
                          true});
    view.notes.push_back({std::to_string(dome.curb_courses) + " plumb courses",
                          {r + dome.width, top - t},
                          {1, -0.2},
                          4,
                          false,
                          true,
                          true});
    return view;
}

View cap_detail(const BuildingPlan& plan, const DomeForm& dome) {
    const Schedule& schedule = plan.schedule;
    View view = start_detail("cap", "Cap of " + dome.id);
    const int first = std::max(1, dome.last_ring - 2);
    double widest = 0;
    for (int n = first; n <= dome.courses(); ++n) {
        const Ring* ring = first_ring(schedule, dome.id, n);
        if (!ring)
            continue;
        const Course& course = schedule.courses[static_cast<std::size_t>(n) - 1];
        widest = std::max(widest, ring->outside_radius);
        if (ring->kind == RingKind::cap) {
            add_tube(view, -ring->outside_radius, ring->outside_radius, course.bottom, course.top);
            continue;
        }
        add_tube(view, ring->inside_radius, ring->outside_radius, course.bottom, course.top);
        add_tube(view, -ring->outside_radius, -ring->inside_radius, course.bottom, course.top);
    }
    const Course& last = schedule.courses[static_cast<std::size_t>(dome.last_ring) - 1];
    const Ring& ring = *first_ring(schedule, dome.id, dome.last_ring);
    add_segment(view, LineRole::axis,
                {0, schedule.courses[static_cast<std::size_t>(first) - 1].bottom - 0.05},
                {0, dome.top() + 0.1});
    add_heights_left(view, {last.bottom, last.top, dome.top()}, -widest, 0, schedule.unit,
                     "dome." + dome.id + ".cap");
    if (const Ring* cap = first_ring(schedule, dome.id, dome.last_ring + 1))
        add_widths_above(view, {-cap->outside_radius, cap->outside_radius}, dome.top(), 0,
                         schedule.unit, "dome." + dome.id + ".cap.width");
    add_widths_above(view, {-ring.inside_radius, ring.inside_radius}, dome.top(), 1, schedule.unit,
                     "dome." + dome.id + ".last_ring");
    view.notes.push_back({"last ring, course " + std::to_string(dome.last_ring),
                          {ring.outside_radius, last.middle},
                          {1, 0},
                          4,
                          false,
                          true,
                          true});
    view.notes.push_back(
        {std::to_string(dome.cap_courses) +
             (dome.cap_courses == 1 ? " cap course of short bags" : " cap courses of short bags"),
         {dome.width / 2, last.top + schedule.course_height / 2},
         {1, 1},
         4,
         false,
         true,
         true});
    return view;
}

/// A point of the plan as seen with a pier upwards from its dome's pole.
Vec2 turned_up(Vec2 point, const ButtressForm& pier) {
    const Vec2 off = point - pier.origin, ahead = pier.axis();
    return {off.x() * ahead.y() - off.y() * ahead.x(), off.dot(ahead)};
}

View bond_view(const BuildingPlan& plan, const ButtressForm& pier, const Course& course) {
    const Schedule& schedule = plan.schedule;
    const Ring* ring = ring_of_dome(course, pier.dome);
    const bool stops = std::any_of(ring->cuts.begin(), ring->cuts.end(),
                                   [&](const Cut& cut) { return cut.by == pier.id; });
    View view = start_detail("bond-" + std::to_string(course.number),
                             "Course " + std::to_string(course.number) + " at " + pier.id +
                                 (stops ? ": the pier runs in" : ": the ring runs through"));
    const PlanFrame frame{{0, 0}, 1, {0, 0}};
    // So much of the ring as stands two widths beside the pier.
    const double reach =
        std::min(60.0, std::atan2(pier.half_width + 1.6 * ring->width, ring->inside_radius) /
                           radians_per_degree);
    for (const Ring& one : course.rings) {
        if (one.dome != pier.dome)
            continue;
        for (const Run& run : one.runs)
            for (const LaidTube& tube : run.tubes) {
                const BandShape whole = tube_shape(one, run, tube);
                for (const double turn : {-360.0, 0.0, 360.0}) {
                    BandShape shape = whole;
                    for (double* bearing : {&shape.inside_start, &shape.inside_end,
                                            &shape.outside_start, &shape.outside_end})
                        *bearing =
                            std::clamp(*bearing - pier.bearing.degrees + turn, -reach, reach);
                    if (shape.inside_end - shape.inside_start < 0.05 ||
                        shape.outside_end - shape.outside_start < 0.05)
                        continue;
                    Outline outline;
                    const FillItem fill = band_fill(shape, frame, {1});
                    outline.from = fill.loops.front().from;
                    for (const FillItem::Edge& edge : fill.loops.front().edges)
                        outline.edges.push_back({edge.to, edge.bulge});
                    view.hatches.push_back({{outline}});
                    view.paths.push_back({LineRole::cut, std::move(outline)});
                }
            }
    }
    for (const Straight& straight : course.straights) {
        if (straight.of != pier.id)
            continue;
        for (const StraightShape& shape : straight_shapes(schedule.building, course, straight)) {
            Outline outline{turned_up(shape.outline.from, pier), {}};
            for (const OutlineEdge& edge : shape.outline.edges)
                outline.edges.push_back({turned_up(edge.to, pier), edge.bulge});
            view.paths.push_back({LineRole::cut, std::move(outline)});
        }
    }
    const double outer = outer_face(pier, course.middle);
    add_widths_above(view, {-pier.half_width, pier.half_width}, outer, 0, schedule.unit,
                     "buttress." + pier.id + ".width");
    add_heights_left(view, {ring->inside_radius, ring->outside_radius, outer},
                     -pier.half_width - ring->width, 0, schedule.unit,
                     "buttress." + pier.id + ".reach");
    view.notes.push_back(
        {pier.id, {0, (ring->outside_radius + outer) / 2}, {0, 1}, 0.5, true, false, true});
    return view;
}

} // namespace

std::vector<View> top_detail(const BuildingPlan& plan, const DomeForm& dome) {
    if (!first_ring(plan.schedule, dome.id, dome.last_ring))
        return {};
    if (dome.curb_courses > 0)
        return {curb_detail(plan, dome)};
    return {cap_detail(plan, dome)};
}

std::vector<View> bond_details(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    const auto& piers = schedule.building.buttresses;
    const auto first = std::find_if(piers.begin(), piers.end(),
                                    [](const ButtressForm& one) { return !one.reveal; });
    if (first == piers.end()) // reveals butt on every course
        return {};
    const ButtressForm& pier = *first;
    std::vector<View> views;
    for (const Course& course : schedule.courses) {
        if (course.below_floor || views.size() == 2 || !ring_of_dome(course, pier.dome))
            continue;
        const bool has_pier =
            std::any_of(course.straights.begin(), course.straights.end(),
                        [&](const Straight& straight) { return straight.of == pier.id; });
        if (has_pier)
            views.push_back(bond_view(plan, pier, course));
    }
    return views;
}

} // namespace coilwright
