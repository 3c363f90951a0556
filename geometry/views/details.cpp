#include "geometry/views/details.hpp"

#include "geometry/plan/wire.hpp"
#include "geometry/views/detail_parts.hpp"
#include "geometry/views/upright_views.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

View start_detail(const std::string& id, const std::string& title) {
    View view;
    view.kind = ViewKind::detail;
    view.id = "detail-" + id;
    view.title = title;
    view.rim = 9;
    return view;
}

const Ring* first_ring(const Schedule& schedule, const std::string& dome, int n) {
    if (n < 1 || n > static_cast<int>(schedule.courses.size()))
        return nullptr;
    for (const Ring& ring : schedule.courses[static_cast<std::size_t>(n) - 1].rings)
        if (ring.dome == dome && ring.wythe == 1)
            return &ring;
    return nullptr;
}

void add_tube(View& view, double inner, double outer, double bottom, double top) {
    const double round = std::min((top - bottom) / 2, (outer - inner) / 2);
    Outline outline{{inner + round, bottom},
                    {{{outer - round, bottom}, 0},
                     {{outer - round, top}, 1},
                     {{inner + round, top}, 0},
                     {{inner + round, bottom}, 1}}};
    view.hatches.push_back({{outline}});
    view.paths.push_back({LineRole::cut, std::move(outline)});
}

int add_rings(View& view, const BuildingPlan& plan, const DomeForm& dome, int first, int last) {
    std::vector<Vec2> inside, outside;
    const Finish& finish = plan.design.finish;
    for (int n = first; n <= last; ++n) {
        const Ring* ring = first_ring(plan.schedule, dome.id, n);
        if (!ring || ring->kind != RingKind::ring)
            continue;
        const Course& course = plan.schedule.courses[static_cast<std::size_t>(n) - 1];
        add_tube(view, ring->inside_radius, ring->outside_radius, course.bottom, course.top);
        // Over the bags' crests, square to the wall's lean.
        const Vec2 out = Vec2(1, -ring->radius_per_height).normalized();
        inside.push_back(Vec2(ring->inside_radius, course.middle) - out * finish.inside_plaster);
        outside.push_back(Vec2(ring->outside_radius, course.middle) + out * finish.outside_plaster);
    }
    for (const auto& [points, thickness] :
         {std::pair{inside, finish.inside_plaster}, std::pair{outside, finish.outside_plaster}}) {
        if (thickness <= 0 || points.size() < 2)
            continue;
        ViewPath face;
        face.role = LineRole::seen;
        face.path.from = points.front();
        for (std::size_t i = 1; i < points.size(); ++i)
            face.path.edges.push_back({points[i], 0});
        view.paths.push_back(std::move(face));
    }
    return static_cast<int>(inside.size());
}

void add_cross(View& view, Vec2 at, double arm) {
    for (const double side : {1.0, -1.0})
        add_segment(view, LineRole::cut, at - Vec2(arm, side * arm), at + Vec2(arm, side * arm));
}

void add_wire(View& view, const BuildingPlan& plan, const Ring& below, const Ring& above,
              double z) {
    const double flat = plan.schedule.course_height / 2;
    const double from = std::max(below.inside_radius, above.inside_radius) + flat;
    const double to = std::min(below.outside_radius, above.outside_radius) - flat;
    const int strands = wire_strands(plan.design, below.tube);
    for (int i = 0; i < strands; ++i)
        add_cross(view, {from + (to - from) * (i + 0.5) / strands, z}, 0.008);
}

void add_widths_above(View& view, const std::vector<double>& places, double y, int row,
                      DisplayUnit unit, const std::string& of) {
    add_chain(view, places, {1, 0}, {0, y}, row, unit, of);
}

void add_heights_left(View& view, const std::vector<double>& places, double x, int row,
                      DisplayUnit unit, const std::string& of) {
    add_chain(view, places, {0, 1}, {x, 0}, row, unit, of);
}

std::vector<View> joint_detail(const BuildingPlan& plan, const DomeForm& dome) {
    const Schedule& schedule = plan.schedule;
    // Half way up the rings that lean.
    std::vector<int> leaning;
    for (int n = 2; n < dome.last_ring; ++n) {
        const Ring* ring = first_ring(schedule, dome.id, n);
        if (ring && first_ring(schedule, dome.id, n - 1) && ring->step_in > 0.001)
            leaning.push_back(n);
    }
    if (leaning.empty())
        return {};
    const int n = leaning[leaning.size() / 2];
    const Ring &below = *first_ring(schedule, dome.id, n - 1),
               &ring = *first_ring(schedule, dome.id, n);
    const Course& course = schedule.courses[static_cast<std::size_t>(n) - 1];
    const std::string number = std::to_string(n);
    View view = start_detail("joint", "Joint under course " + number + " of " + dome.id);
    add_rings(view, plan, dome, n - 1, n + 1);
    add_wire(view, plan, below, ring, course.bottom);
    const Ring* above = first_ring(schedule, dome.id, n + 1);
    if (above && above->kind == RingKind::ring)
        add_wire(view, plan, ring, *above, course.top);
    const double t = schedule.course_height, flat = t / 2;
    const double top = course.top, x = below.outside_radius;
    add_widths_above(view, {ring.inside_radius, below.inside_radius}, top, 0, schedule.unit,
                     "course." + number + ".step_in");
    const double from = std::max(below.inside_radius, ring.inside_radius),
                 to = std::min(below.outside_radius, ring.outside_radius);
    add_widths_above(view, {from, to}, top, 1, schedule.unit,
                     "course." + number + ".bearing_width");
    add_widths_above(view, {ring.inside_radius, ring.outside_radius}, top, 2, schedule.unit,
                     "tube." + ring.tube + ".width");
    add_heights_left(view, {course.bottom, course.top}, ring.inside_radius, 0, schedule.unit,
                     "course.height");
    const int strands = wire_strands(plan.design, ring.tube);
    view.notes.push_back(
        {std::to_string(strands) + (strands == 1 ? " strand" : " strands") + " of barbed wire",
         {from + flat + (to - from - t) * (strands - 0.5) / strands, course.bottom},
         {1, -1},
         4,
         false,
         true,
         true});
    view.notes.push_back(
        {"tamped tube, course " + number, {x - flat, course.middle}, {1, 0}, 4, false, true, true});
    if (plan.design.finish.outside_plaster > 0)
        view.notes.push_back(
            {"outside plaster " + length_text(plan.design.finish.outside_plaster, schedule.unit),
             {x + plan.design.finish.outside_plaster, course.bottom - flat},
             {1, -0.4},
             4,
             false,
             true,
             true});
    if (plan.design.finish.inside_plaster > 0)
        view.notes.push_back(
            {"inside plaster " + length_text(plan.design.finish.inside_plaster, schedule.unit),
             {below.inside_radius - plan.design.finish.inside_plaster, course.bottom - flat},
             {-1, -0.4},
             4,
             false,
             true,
             true});
    return {view};
}

std::vector<View> detail_views(const BuildingPlan& plan) {
    const DomeForm& main = *main_axis(plan.schedule).dome;
    const DomeForm* open = &main; // with a skylight, if any dome has one
    for (const DomeForm& dome : plan.schedule.building.domes)
        if (open->curb_courses == 0 && dome.curb_courses > 0)
            open = &dome;
    std::vector<View> views;
    for (const std::vector<View>& some : {joint_detail(plan, main), sill_detail(plan),
                                          lintel_detail(plan), top_detail(plan, *open)})
        views.insert(views.end(), some.begin(), some.end());
    return views;
}

} // namespace coilwright
