#include "geometry/drawing/figures.hpp"
#include "geometry/plan/trench_room.hpp"
#include "geometry/views/plan_parts.hpp"
#include "geometry/views/seen_edges.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

/// Room on each side of a footing in its trench, by the width of one of its tubes.
double room_beside(const BuildingPlan& plan, double tube) {
    return trench_room(plan.design.trench, tube) / 2;
}

/// What the lowest course leaves to dig: its expression with solids grown and voids shrunk.
PlanExpression trench_expression(const BuildingPlan& plan, double z) {
    const BuildingForm& building = plan.schedule.building;
    TaggedExpression wall = tagged_wall(building, make_relations(building), z);
    for (std::size_t i = 0; i < wall.tags.size(); ++i) {
        const auto element = static_cast<std::size_t>(wall.tags[i].element);
        const auto dome_room = [&](const DomeForm& dome) {
            return room_beside(plan, ring_width(dome, z));
        };
        double room = 0;
        switch (wall.tags[i].role) {
        case SectionRole::dome_outside:
            room = dome_room(building.domes[element]);
            break;
        case SectionRole::dome_inside:
            room = -dome_room(building.domes[element]);
            break;
        case SectionRole::tunnel_body:
            room = room_beside(plan, building.tunnels[element].width);
            break;
        case SectionRole::tunnel_void:
            room = -room_beside(plan, building.tunnels[element].width);
            break;
        case SectionRole::pier:
            room = room_beside(plan, find_dome(building, building.buttresses[element].dome)->width);
            break;
        case SectionRole::hole:
            break;
        }
        Shape& shape = wall.plan.shapes[i];
        const TunnelForm* open =
            wall.tags[i].role == SectionRole::tunnel_void ? &building.tunnels[element] : nullptr;
        if (open && open->to.empty() && !open->end_wall)
            std::get<Box>(shape).to -= 3 * room; // no wall stands across its mouth
        if (Disc* disc = std::get_if<Disc>(&shape)) {
            disc->radius = std::max(0.0, disc->radius + room);
        } else if (Box* box = std::get_if<Box>(&shape)) {
            box->to += room;
            box->low -= room;
            box->high += room;
        }
    }
    return wall.plan;
}

void add_axis(View& view, const OpeningForm& form, double to) {
    add_segment(view, LineRole::axis, form.origin, form.origin + form.axis * to);
}

/// Which way piers and tunnels are set out from their pole; how wide and how far, the schedules
/// say.
void add_bearings(View& view, const BuildingForm& building) {
    const auto note = [&](const std::string& id, Bearing bearing, const Vec2& at,
                          const Vec2& outward) {
        view.notes.push_back(
            {id + "  " + degrees_text(bearing.degrees), at, outward, 6, false, true});
    };
    for (const ButtressForm& pier : building.buttresses)
        if (!pier.reveal)
            note(pier.id, pier.bearing, pier.origin + pier.axis() * outer_face(pier, pier.bottom),
                 pier.axis());
    for (const TunnelForm& tunnel : building.tunnels) {
        const Vec2 aside = right_of(tunnel.bearing);
        if (tunnel.to.empty())
            note(tunnel.id, tunnel.bearing, tunnel.origin + tunnel.axis() * tunnel.reach,
                 tunnel.axis());
        else
            note(tunnel.id, tunnel.bearing,
                 tunnel.origin + tunnel.axis() * (tunnel.reach / 2) +
                     aside * outer_half_width(tunnel, tunnel.bottom()),
                 aside);
    }
}

} // namespace

View foundation_plan(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    const BuildingForm& building = schedule.building;
    View view;
    view.kind = ViewKind::foundation;
    view.id = "foundation-plan";
    view.title = "Foundation plan: course 1 in its trench";
    view.north = true;
    view.rim = 22;
    const Course& lowest = schedule.courses.front();
    add_region(view, decided_region(trench_expression(plan, lowest.middle)), LineRole::trench,
               false);
    add_region(view, lowest.wall, LineRole::cut, true);
    for (const DomeForm& dome : building.domes)
        add_pole(view, dome.at, 0.06);
    add_pole_chains(view, building, schedule.unit);
    add_sleeves(view, plan, true);
    const auto wide = [&](const DomeForm& dome) {
        const double width =
            outside_radius(dome, lowest.middle) - inside_radius(dome, lowest.middle);
        return length_text(width + 2 * room_beside(plan, ring_width(dome, lowest.middle)),
                           schedule.unit);
    };
    const std::string usual = wide(building.domes.front());
    view.title +=
        ", " + usual + " wide, " +
        length_text(plan.design.ground.level - lowest.bottom + plan.design.trench.gravel_depth,
                    schedule.unit) +
        " deep";
    for (const DomeForm& dome : building.domes) {
        view.notes.push_back({dome.id, dome.at, {0, 1}, 5, true, false});
        view.notes.push_back(
            {"Ø " + length_text(2 * inside_radius(dome, lowest.middle), schedule.unit) + " inside",
             dome.at,
             {0, -1},
             5,
             false,
             false,
             true});
        if (wide(dome) != usual)
            view.notes.push_back(
                {"trench " + wide(dome) + " wide", dome.at, {0, -1}, 9.5, false, false});
    }
    add_bearings(view, building);
    return view;
}

View roof_plan(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance) {
    const Schedule& schedule = plan.schedule;
    const BuildingForm& building = schedule.building;
    View view;
    view.kind = ViewKind::roof;
    view.id = "roof-plan";
    view.title = "Roof and site plan";
    view.north = true;
    view.rim = 22;
    const SightBlock block(shell.mesh, sight_from_above());
    for (const SeenLine& line : seen_edges(shell, block, tolerance)) {
        ViewPath path;
        path.role = LineRole::seen;
        path.path.from = line.points.front();
        for (std::size_t i = 1; i < line.points.size(); ++i)
            path.path.edges.push_back({line.points[i], 0});
        view.paths.push_back(std::move(path));
    }
    // Plumb walls are seen edge-on: their foot is their outline.
    Region foot = decided_region(footprint_expression(
        building,
        std::max(plan.design.ground.level, schedule.courses.front().bottom) + height_tie));
    foot.loops.erase(std::remove_if(foot.loops.begin(), foot.loops.end(),
                                    [](const BoundaryLoop& loop) { return loop.area < 0; }),
                     foot.loops.end());
    add_region(view, foot, LineRole::seen, false);
    add_pole_chains(view, building, schedule.unit);
    const auto tags = opening_tags(schedule);
    for (const OpeningPlan& opening : schedule.openings) {
        const OpeningForm& form = opening.form;
        const HoleFaces faces =
            hole_faces(building, form, form.half_width, std::max(form.sill, 0.0));
        if (form.use == OpeningUse::niche || !(faces.outer > faces.inner))
            continue;
        add_axis(view, form, faces.outer + 0.3);
        const Bearing bearing = to_bearing({std::atan2(form.axis.y(), form.axis.x())});
        view.notes.push_back({tags.at(form.id) + "  " + degrees_text(bearing.degrees),
                              form.origin + form.axis * (faces.outer + 0.3), form.axis, 4, false,
                              true});
    }
    for (const DomeForm& dome : building.domes) {
        add_pole(view, dome.at, 0.06);
        view.notes.push_back({dome.id, dome.at, {0, 1}, 5, true, true});
        view.notes.push_back(
            {"top " + length_text(dome.top(), schedule.unit), dome.at, {0, -1}, 5, false, true});
    }
    for (const auto& [id, tag] : skylight_tags(schedule)) {
        const DomeForm& dome = *find_dome(building, id);
        view.notes.push_back(
            {tag, dome.at + Vec2(dome.last_ring_radius, 0), {1, 1}, 4, false, true});
    }
    for (const TunnelForm& tunnel : building.tunnels) {
        if (!tunnel.to.empty())
            continue;
        const Vec2 end = tunnel.origin + tunnel.axis() * tunnel.reach;
        add_segment(view, LineRole::axis, tunnel.origin, end + tunnel.axis() * 0.3);
        view.notes.push_back({tunnel.id + "  " + degrees_text(tunnel.bearing.degrees),
                              end + tunnel.axis() * 0.3, tunnel.axis(), 4, false, true});
    }
    return view;
}

} // namespace coilwright
