#include "geometry/drawing/figures.hpp"
#include "geometry/views/mesh_cut.hpp"
#include "geometry/views/plan_parts.hpp"
#include "geometry/views/upright_parts.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

MainAxis main_axis(const Schedule& schedule) {
    const BuildingForm& building = schedule.building;
    for (const OpeningPlan& opening : schedule.openings)
        if (opening.form.use == OpeningUse::door) {
            const TunnelForm* tunnel = find_tunnel(building, opening.form.in);
            if (const DomeForm* dome = find_dome(building, tunnel ? tunnel->from : opening.form.in))
                return {dome, tunnel ? tunnel->bearing : opening.form.bearing};
        }
    for (const TunnelForm& tunnel : building.tunnels)
        if (tunnel.to.empty())
            if (const DomeForm* dome = find_dome(building, tunnel.from))
                return {dome, tunnel.bearing};
    return {&building.domes.front(), building.domes.front().datum};
}

std::vector<Stretch> stretches(const PlanExpression& in, const PlanExpression& out, Vec2 origin,
                               Vec2 along, double from, double to) {
    const auto holds = [&](double s) {
        const Vec2 at = origin + along * s;
        return contains(in, at) && !contains(out, at);
    };
    constexpr double step = 0.02; // m: narrower ones are of no matter in a drawing
    std::vector<Stretch> found;
    bool inside = false;
    double last = from;
    for (double s = from; s <= to + step; s += step) {
        const bool now = s <= to && holds(s);
        if (now != inside) {
            double low = last, high = s;
            while (high - low > 1e-6)
                (holds((low + high) / 2) == inside ? low : high) = (low + high) / 2;
            if (now)
                found.push_back({high, high});
            else
                found.back().to = low;
        }
        inside = now;
        last = s;
    }
    return found;
}

namespace {

/// The points of a dome's wall that its levels are written for, in the section's frame.
struct CutDome {
    const DomeForm* dome;
    double pole; // x in the view
};

void add_levels(View& view, const BuildingPlan& plan, const CutDome& cut) {
    const DomeForm& dome = *cut.dome;
    const DisplayUnit unit = plan.schedule.unit;
    const double a = dome.profile.half_span, x = cut.pole;
    const bool closed = dome.cap_courses > 0;
    const double top = closed ? dome.ceiling() : dome.top();
    add_segment(view, LineRole::axis, {x, 0}, {x, top});
    view.notes.push_back(
        {dome.id, {x, 80 * metres_per_inch}, {-1, 1}, 3.2, true, false, false, a}); // first: in its
                                                                                    // room
    if (dome.springline > 1e-6) {
        add_segment(view, LineRole::level, {x - a, dome.springline}, {x + a, dome.springline});
        // Domes whose springlines lie level share one note.
        const std::string note = "springline " + length_text(dome.springline, unit);
        if (std::none_of(view.notes.begin(), view.notes.end(),
                         [&](const ViewNote& one) { return one.text == note; }))
            view.notes.push_back({note, {x - a * 0.45, dome.springline}, {0, 1}, 2.6, false, true});
    }
    if (closed) // of the course of discs, not of the profile's point within it
        view.notes.push_back(
            {"underside " + length_text(top, unit), {x, top}, {-0.7, -0.7}, 8, false, true});
    view.notes.push_back({(closed ? "top " : "curb ") + length_text(dome.top(), unit),
                          {x, dome.top()},
                          {-0.7, 0.7},
                          5,
                          false,
                          true});
    // The compass: its pivot or the chain's fixing.
    const double p = dome.chain_height;
    add_segment(view, LineRole::seen, {x - 0.06, p - 0.06}, {x + 0.06, p + 0.06});
    add_segment(view, LineRole::seen, {x - 0.06, p + 0.06}, {x + 0.06, p - 0.06});
    view.notes.push_back(
        {"compass centre " + length_text(p, unit), {x, p}, {0.8, -0.6}, 9, false, true, true});
    // Headroom: what the rule of its use asks for, else 6 ft 8 in.
    const auto rule = plan.design.rules.find(word(dome.use));
    const double height = rule != plan.design.rules.end() && rule->second.clear_height > 0
                              ? rule->second.clear_height
                              : 80 * metres_per_inch;
    const double radius = clear_radius_at(dome, plan.design.finish.inside_plaster, height);
    if (radius > 0.05) {
        add_segment(view, LineRole::level, {x - radius, height}, {x + radius, height});
        view.notes.push_back(
            {length_text(height, unit) + " clear over " + length_text(2 * radius, unit),
             {x + radius * 0.4, height},
             {0, 1},
             2.6,
             false,
             true});
    }
}

void add_heights(View& view, const BuildingPlan& plan, const DomeForm& dome, double left) {
    const DisplayUnit unit = plan.schedule.unit;
    const double top = dome.cap_courses > 0 ? dome.ceiling() : dome.top();
    const Vec2 at(left, 0), up(0, 1);
    add_chain(view, {dome.bottom(), 0, std::max(0.0, dome.springline), top}, up, at, 0, unit,
              "dome." + dome.id + ".levels");
    add_chain(view, {dome.bottom(), dome.top()}, up, at, 1, unit, "dome." + dome.id + ".wall");
}

void add_widths(View& view, const BuildingPlan& plan, const CutDome& cut, Vec2 right, double low) {
    const DomeForm& dome = *cut.dome;
    const double a = inside_radius(dome, 0), w = outside_radius(dome, 0) - a, x = cut.pole;
    // A side on which it runs into another room or a tunnel has no wall to measure, not even in the
    // ground.
    const auto has_wall = [&](double side, double z) {
        return contains(wall_expression(plan.schedule.building, z),
                        Vec2(dome.at + right * (side * (a + w / 2))));
    };
    std::vector<double> places{-(x - a), -(x + a)};
    for (const double side : {-1.0, 1.0})
        if (has_wall(side, height_tie) || has_wall(side, plan.schedule.courses.front().middle))
            places.push_back(-(x + side * (a + w)));
    add_chain(view, places, {-1, 0}, {x, low}, 0, plan.schedule.unit,
              "dome." + dome.id + ".widths");
}

/// Sill and head of the opening in the plane, at its outside.
void add_opening_heights(View& view, const BuildingPlan& plan, Vec2 origin, Vec2 ahead,
                         double right, double left) {
    for (const OpeningPlan& opening : plan.schedule.openings) {
        const OpeningForm& form = opening.form;
        const Vec2 off = form.origin - origin;
        const double across = off.x() * ahead.y() - off.y() * ahead.x();
        if (std::abs(form.axis.dot(ahead)) < 1 - 1e-9 || std::abs(across) > 1e-6)
            continue;
        const bool on_right = form.axis.dot(ahead) > 0;
        const int rows = rows_beside(view, {on_right ? 1.0 : -1.0, 0});
        const Vec2 along(0, on_right ? -1 : 1);
        std::vector<double> places{form.sill, form.top};
        if (form.sill > 1e-6)
            places.push_back(0);
        if (on_right)
            for (double& place : places)
                place = -place;
        add_chain(view, places, along, {on_right ? right : left, 0}, rows, plan.schedule.unit,
                  "opening." + form.id + ".heights");
    }
}

/// Lintels where the plane cuts them, crossed as cut timber is.
void add_lintels(View& view, const Schedule& schedule, const Vec2& origin, const Vec2& ahead,
                 double x0, double from, double to) {
    for (const Lintel& lintel : schedule.lintels) {
        const auto opening =
            std::find_if(schedule.openings.begin(), schedule.openings.end(),
                         [&](const OpeningPlan& one) { return one.form.id == lintel.opening; });
        if (opening == schedule.openings.end())
            continue;
        const double middle = lintel.centre_distance, w = lintel.width / 2, l = lintel.length / 2;
        const PlanExpression body{
            {Box{opening->form.origin, opening->form.axis, middle - w, middle + w, -l, l}},
            {{lintel.opening, 0, {}}}};
        for (const Stretch& cut : stretches(body, {}, origin, ahead, from - x0, to - x0)) {
            const Vec2 low(x0 + cut.from, lintel.bottom);
            const Vec2 high(x0 + cut.to, lintel.bottom + lintel.depth);
            const Vec2 right(high.x(), low.y()), left(low.x(), high.y());
            view.paths.push_back(
                {LineRole::cut, Outline{low, {{right, 0}, {high, 0}, {left, 0}, {low, 0}}}});
            add_segment(view, LineRole::cut, low, high);
            add_segment(view, LineRole::cut, left, right);
        }
    }
}

} // namespace

View section(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance,
             const DomeForm& dome, Bearing right, const std::string& letter) {
    const Schedule& schedule = plan.schedule;
    const BuildingForm& building = schedule.building;
    const SightFrame frame = sight_from(turned(right, 90));
    const Vec2 ahead = along(right);
    const Vec3 pole(dome.at.x(), dome.at.y(), 0);
    const double depth = frame.of(pole).z();
    View view;
    view.kind = ViewKind::section;
    view.id = "section-" + letter;
    view.title = "Section " + letter + "-" + letter + " through " + dome.id + " along " +
                 degrees_text(right.degrees);
    std::vector<CutDome> domes;
    std::vector<CutCircle> circles;
    for (const DomeForm& one : building.domes) {
        const Vec3 at = frame.of(Vec3(one.at.x(), one.at.y(), 0));
        if (std::abs(at.z() - depth) > 1e-6)
            continue;
        domes.push_back({&one, at.x()});
        for (const CutCircle& circle : circles_of(one, at.x()))
            circles.push_back(circle);
    }
    ViewHatch hatch;
    const std::vector<std::vector<Vec2>> faces = mesh_cut(shell.mesh, frame, depth);
    for (const std::vector<Vec2>& loop : faces) {
        hatch.loops.push_back(with_arcs(loop, circles, 1.25 * tolerance));
        view.paths.push_back({LineRole::cut, hatch.loops.back()});
    }
    view.hatches.push_back(std::move(hatch));
    const ViewExtent cut = extent_of(view);
    const double ground = plan.design.ground.level;
    const SightBlock behind(shell.mesh, frame, depth - 1e-4);
    add_seen_above(view, before_cut_face(seen_edges(shell, behind, tolerance), faces),
                   std::min(ground, 0.0));
    // Floor within the walls, ground beyond them.
    const ViewExtent all = extent_of(view);
    const Vec2 origin(dome.at);
    const double x0 = frame.of(pole).x();
    const double apron = 0.06 * all.size().x() + 0.2;
    const double from = all.low.x() - apron, to = all.high.x() + apron;
    const PlanExpression wall = wall_expression(building, height_tie);
    const PlanExpression foot = footprint_expression(building, height_tie);
    for (const Stretch& floor : stretches(foot, wall, origin, ahead, from - x0, to - x0))
        add_segment(view, LineRole::cut, {x0 + floor.from, 0}, {x0 + floor.to, 0});
    add_lintels(view, schedule, origin, ahead, x0, from, to);
    const PlanExpression ground_foot = footprint_expression(
        building, std::max(ground, schedule.courses.front().bottom) + height_tie);
    double last = from;
    std::vector<Stretch> solid = stretches(ground_foot, {}, origin, ahead, from - x0, to - x0);
    solid.push_back({to - x0, to - x0});
    for (const Stretch& body : solid) {
        if (x0 + body.from > last + 0.01)
            add_segment(view, LineRole::ground, {last, ground}, {x0 + body.from, ground});
        last = x0 + body.to;
    }
    for (const CutDome& one : domes)
        add_levels(view, plan, one);
    add_heights(view, plan, dome, cut.low.x());
    add_widths(view, plan, {&dome, x0}, ahead, cut.low.y());
    add_opening_heights(view, plan, origin, ahead, cut.high.x(), cut.low.x());
    return view;
}

} // namespace coilwright
