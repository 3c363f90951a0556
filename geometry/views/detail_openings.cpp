#include "geometry/design/design.hpp"
#include "geometry/views/detail_parts.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

void add_rectangle(View& view, LineRole role, Vec2 low, Vec2 high, bool hatched) {
    Outline outline{low, {{{high.x(), low.y()}, 0}, {high, 0}, {{low.x(), high.y()}, 0}, {low, 0}}};
    if (hatched)
        view.hatches.push_back({{outline}});
    view.paths.push_back({role, std::move(outline)});
}

/// The course whose top is nearest to a height.
int course_under(const Schedule& schedule, double z) {
    int best = 1;
    for (const Course& course : schedule.courses)
        if (std::abs(course.top - z) <
            std::abs(schedule.courses[static_cast<std::size_t>(best) - 1].top - z))
            best = course.number;
    return best;
}

} // namespace

std::vector<View> sill_detail(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    for (const OpeningPlan& opening : schedule.openings) {
        const OpeningForm& form = opening.form;
        const DomeForm* dome = find_dome(schedule.building, form.in);
        if (form.use != OpeningUse::window || form.in_tunnel || !dome ||
            form.head_kind == HeadKind::circle || opening.frame_depth <= 0 ||
            opening.frame_inset <= 0)
            continue;
        const int n = course_under(schedule, form.sill);
        View view = start_detail("sill", "Sill of " + form.id);
        if (add_rings(view, plan, *dome, n - 2, n) < 2)
            continue;
        const double inner = inside_radius(*dome, form.sill),
                     outer = outside_radius(*dome, form.sill);
        const double outside = outer + plan.design.finish.outside_plaster;
        const double middle =
            std::clamp((opening.frame_band_start + opening.frame_band_end) / 2, inner, outer);
        const double x0 = middle - opening.frame_depth / 2, x1 = middle + opening.frame_depth / 2;
        const double foot = form.sill + opening.frame_inset;
        add_rectangle(view, LineRole::cut, {x0, foot}, {x1, foot + opening.frame_width}, false);
        for (const double side : {0.0, 1.0}) // the wood's own hatch: its diagonals
            add_segment(view, LineRole::seen, {x0, foot + side * opening.frame_width},
                        {x1, foot + (1 - side) * opening.frame_width});
        // The sill: from under the frame outwards, falling, its nose clear of the plaster.
        constexpr double nose = 0.025;
        const double reach = outside + nose - x1;
        const double fall = std::min(0.1, (opening.frame_inset - 0.005) / std::max(reach, 0.01));
        const double low = foot - fall * reach;
        view.paths.push_back({LineRole::cut,
                              {{x0, foot},
                               {{{x0, form.sill}, 0},
                                {{outside + nose, low - 0.012}, 0},
                                {{outside + nose, low}, 0},
                                {{x1, foot}, 0},
                                {{x0, foot}, 0}}}});
        add_segment(view, LineRole::seen, {inner - plan.design.finish.inside_plaster, foot},
                    {x0, foot});
        add_segment(view, LineRole::axis, {middle, form.sill - schedule.course_height},
                    {middle, foot + opening.frame_width + 0.08});
        const std::string of = "opening." + form.id;
        add_widths_above(view, {inner, x0, x1, outer}, form.sill, 0, schedule.unit, of + ".frame");
        const Course& top = schedule.courses[static_cast<std::size_t>(n) - 1];
        add_heights_left(view, {top.bottom, form.sill, foot}, inner, 0, schedule.unit,
                         of + ".sill");
        view.notes.push_back({"sill " + length_text(form.sill, schedule.unit) + " above the floor",
                              {inner, form.sill},
                              {-1, 1},
                              4,
                              false,
                              true,
                              true});
        view.notes.push_back(
            {"frame", {x1, foot + opening.frame_width}, {1, 1}, 4, false, true, true});
        view.notes.push_back(
            {"falls 1 in " + fixed_text(1 / std::max(fall, 0.005), 0) + ", nose with a drip",
             {outside + nose, low},
             {1, 0.5},
             4,
             false,
             true,
             true});
        return {view};
    }
    return {};
}

std::vector<View> lintel_detail(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    for (const Lintel& lintel : schedule.lintels) {
        const auto opening =
            std::find_if(schedule.openings.begin(), schedule.openings.end(),
                         [&](const OpeningPlan& one) { return one.form.id == lintel.opening; });
        if (opening == schedule.openings.end() || opening->form.in_tunnel)
            continue;
        const DomeForm* dome = find_dome(schedule.building, opening->form.in);
        if (!dome)
            continue;
        View view = start_detail("lintel", "Lintel of " + lintel.opening);
        if (add_rings(view, plan, *dome, lintel.last_course + 1, lintel.last_course + 2) < 1)
            continue;
        const double c = lintel.centre_distance, half = lintel.width / 2;
        const double top = lintel.bottom + lintel.depth;
        add_rectangle(view, LineRole::cut, {c - half, lintel.bottom}, {c + half, top},
                      lintel.kind == LintelKind::concrete);
        if (lintel.kind == LintelKind::timber)
            for (const double side : {0.0, 1.0})
                add_segment(view, LineRole::seen, {c - half, lintel.bottom + side * lintel.depth},
                            {c + half, lintel.bottom + (1 - side) * lintel.depth});
        if (lintel.packing > 0.001) {
            add_rectangle(view, LineRole::cut, {c - half, top}, {c + half, top + lintel.packing},
                          true);
            view.notes.push_back({"packed " + length_text(lintel.packing, schedule.unit),
                                  {c + half, top + lintel.packing / 2},
                                  {1, 0},
                                  4,
                                  false,
                                  true,
                                  true});
        }
        // The ring it bears on, beyond: seen past the jamb.
        if (const Ring* below = first_ring(schedule, dome->id, lintel.first_course - 1)) {
            const Course& course =
                schedule.courses[static_cast<std::size_t>(lintel.first_course) - 2];
            const double round = (course.top - course.bottom) / 2;
            view.paths.push_back({LineRole::seen,
                                  {{below->inside_radius + round, course.bottom},
                                   {{{below->outside_radius - round, course.bottom}, 0},
                                    {{below->outside_radius - round, course.top}, 1},
                                    {{below->inside_radius + round, course.top}, 0},
                                    {{below->inside_radius + round, course.bottom}, 1}}}});
            view.notes.push_back({"bears on course " + std::to_string(course.number),
                                  {below->outside_radius - round, course.middle},
                                  {1, -0.5},
                                  4,
                                  false,
                                  true,
                                  true});
            add_widths_above(view,
                             {below->inside_radius, c - half, c + half, below->outside_radius}, top,
                             0, schedule.unit, "lintel." + lintel.opening + ".place");
        }
        add_heights_left(view, {lintel.bottom, top, top + lintel.packing}, c - half, 0,
                         schedule.unit, "lintel." + lintel.opening + ".depth");
        view.notes.push_back({word(lintel.kind) + " lintel, " +
                                  length_text(lintel.length, schedule.unit) + " long, " +
                                  length_text(lintel.bearing, schedule.unit) + " on each side",
                              {c, lintel.bottom},
                              {-0.5, -1},
                              4,
                              false,
                              true,
                              true});
        return {view};
    }
    return {};
}

} // namespace coilwright
