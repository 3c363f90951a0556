#include "geometry/drawing/figures.hpp"
#include "geometry/views/plan_parts.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

/// The outer loops of the footprint, with holes left out: what the walls' foot shows from above.
Region outer_loops(const Region& region) {
    Region outer;
    for (const BoundaryLoop& loop : region.loops)
        if (loop.area > 0)
            outer.loops.push_back(loop);
    return outer;
}

void add_frame_lines(View& view, const OpeningPlan& opening, const HoleFaces& faces) {
    const OpeningForm& form = opening.form;
    const Vec2 right(form.axis.y(), -form.axis.x());
    if (form.use == OpeningUse::niche) {
        add_segment(view, LineRole::seen, faces.inner_left, faces.inner_right);
        return;
    }
    // The reveal's edges below.
    add_segment(view, LineRole::seen, faces.inner_left, faces.inner_right);
    add_segment(view, LineRole::seen, faces.outer_left, faces.outer_right);
    if (opening.frame_depth <= 0)
        return;
    const LineRole role = form.use == OpeningUse::door ? LineRole::door : LineRole::glazing;
    const double middle = std::clamp((opening.frame_band_start + opening.frame_band_end) / 2,
                                     faces.inner, faces.outer);
    const double half = faces.half - opening.frame_inset;
    const double from = middle - opening.frame_depth / 2, to = middle + opening.frame_depth / 2;
    const auto at = [&](double ahead, double aside) {
        return Vec2(form.origin + form.axis * ahead + right * aside);
    };
    for (const double side : {-1.0, 1.0}) {
        const double a = side * half, b = side * (half - opening.frame_width);
        if (std::abs(b) < 0.01)
            continue;
        Outline frame;
        frame.from = at(from, a);
        for (const Vec2& corner : {at(to, a), at(to, b), at(from, b), at(from, a)})
            frame.edges.push_back({corner, 0});
        view.paths.push_back({role, std::move(frame)});
    }
    const double clear = half - opening.frame_width;
    if (form.use != OpeningUse::door && clear > 0.01)
        add_segment(view, role, at(middle, -clear), at(middle, clear));
}

/// An opening that the cut misses: its sides dashed.
void add_missed(View& view, const HoleFaces& faces) {
    add_segment(view, LineRole::hidden, faces.inner_left, faces.outer_left);
    add_segment(view, LineRole::hidden, faces.inner_right, faces.outer_right);
}

void add_opening(View& view, const BuildingPlan& plan, const OpeningPlan& opening,
                 const std::string& tag, double height) {
    const OpeningForm& form = opening.form;
    const BuildingForm& building = plan.schedule.building;
    const double half = half_width(form, height);
    const bool cut = half > 0.005;
    const double z = cut ? height : std::clamp(height, form.sill, form.top);
    const HoleFaces faces = hole_faces(building, form, cut ? half : form.half_width, z);
    if (!(faces.outer > faces.inner))
        return;
    if (cut)
        add_frame_lines(view, opening, faces);
    else
        add_missed(view, faces);
    const Vec2 outer = form.origin + form.axis * faces.outer;
    if (form.use != OpeningUse::niche) {
        // The rough width that the schedule gives, also where the head has begun to close it.
        const HoleFaces rough = hole_faces(building, form, form.half_width, z);
        ViewDimension width;
        width.from = rough.outer_left;
        width.to = rough.outer_right;
        width.along = right_of(to_bearing({std::atan2(form.axis.y(), form.axis.x())}));
        width.offset = 5;
        width.optional = true;
        width.text = length_text(2 * form.half_width, plan.schedule.unit);
        width.of = "opening." + form.id + ".width";
        view.dimensions.push_back(std::move(width));
    }
    const Bearing bearing = to_bearing({std::atan2(form.axis.y(), form.axis.x())});
    view.notes.push_back(
        {tag + "  " + degrees_text(bearing.degrees), outer, form.axis, 14, true, true});
}

} // namespace

View floor_plan(const BuildingPlan& plan, double height) {
    const Schedule& schedule = plan.schedule;
    const BuildingForm& building = schedule.building;
    View view;
    view.id = "floor-plan";
    view.title = "Floor plan, cut " + length_text(height, schedule.unit) + " above the floor";
    view.north = true;
    view.rim = 22;
    add_region(view, outer_loops(decided_region(footprint_expression(building, height_tie))),
               LineRole::seen, false);
    add_region(view, decided_region(wall_expression(building, height)), LineRole::cut, true);
    const auto tags = opening_tags(schedule);
    for (const OpeningPlan& opening : schedule.openings)
        add_opening(view, plan, opening, tags.at(opening.form.id), height);
    for (const DomeForm& dome : building.domes) {
        add_pole(view, dome.at, 0.06);
        if (dome.cap_courses == 0 && dome.last_ring_radius > 0)
            add_whole_circle(view, LineRole::hidden, dome.at, dome.last_ring_radius);
    }
    for (const TunnelForm& tunnel : building.tunnels) {
        if (!tunnel.to.empty())
            continue;
        const Vec2 end = tunnel.origin + tunnel.axis() * tunnel.reach;
        view.notes.push_back({tunnel.id + "  " + degrees_text(tunnel.bearing.degrees), end,
                              tunnel.axis(), tunnel.end_wall ? 20.0 : 12.0, true, true});
        if (inner_half_width(tunnel, height) <= 0)
            continue;
        const double half = inner_half_width(tunnel, 0);
        const Vec2 right = right_of(tunnel.bearing);
        ViewDimension width;
        width.from = end - right * half;
        width.to = end + right * half;
        width.along = right;
        width.offset = tunnel.end_wall ? 12 : 5; // beyond the end wall's door
        width.text = length_text(2 * half, schedule.unit);
        width.of = "tunnel." + tunnel.id + ".width";
        view.dimensions.push_back(std::move(width));
    }
    add_pole_chains(view, building, schedule.unit);
    add_sleeves(view, plan, false);
    add_dome_names(view, plan, true);
    for (const ButtressForm& pier : building.buttresses)
        if (!pier.reveal)
            view.notes.push_back({pier.id, pier.origin + pier.axis() * outer_face(pier, 0),
                                  pier.axis(), 4, false, true, true});
    return view;
}

} // namespace coilwright
