#include "geometry/views/opening_schedule.hpp"

#include "geometry/drawing/figures.hpp"
#include "geometry/plan/building_rooms.hpp"
#include "geometry/plan/clear_outline.hpp"
#include "geometry/views/plan_parts.hpp"
#include "geometry/views/plan_views.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace coilwright {

namespace {

Table opening_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Tag"}, Align::left, true},
                     {{"Name"}, Align::left, false},
                     {{"Use"}, Align::left, false},
                     {{"In"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Rough", "width"}, Align::right, false},
                     {{"Rough", "height"}, Align::right, false},
                     {{"Sill"}, Align::right, false},
                     {{"Springing"}, Align::right, false},
                     {{"Head"}, Align::left, false},
                     {{"Frame"}, Align::right, false},
                     {{"Clear", "width"}, Align::right, false},
                     {{"Clear", "height"}, Align::right, false},
                     {{"Clear", "area"}, Align::right, false}};
    const auto tags = opening_tags(drafting.schedule());
    for (const OpeningPlan& opening : drafting.schedule().openings) {
        const OpeningForm& form = opening.form;
        const Bearing bearing = to_bearing({std::atan2(form.axis.y(), form.axis.x())});
        const bool niche = form.use == OpeningUse::niche;
        table.rows.push_back(
            {tags.at(form.id), form.id, word(form.use), form.in, degrees_text(bearing.degrees),
             drafting.length(2 * form.half_width), drafting.length(form.top - form.sill),
             drafting.length(form.sill), drafting.length(form.springing),
             word(form.head_kind) + (form.fan_depth > 0 ? ", fan"
                                     : form.lintel      ? ", lintel"
                                                        : ""),
             niche ? "–"
                   : drafting.length(opening.frame_width) + " x " +
                         drafting.length(opening.frame_depth),
             drafting.length(opening.clear_width), drafting.length(opening.clear_height),
             niche ? "–" : area_text(clear_area(clear_outline(opening)), drafting.unit())});
    }
    for (const auto& [dome, tag] : skylight_tags(drafting.schedule())) {
        const DomeForm& form = *find_dome(drafting.schedule().building, dome);
        const double width = 2 * form.last_ring_radius;
        table.rows.push_back({tag, "skylight", "skylight", dome, "–", drafting.length(width), "–",
                              drafting.length(form.top()), "–", "circle", "–", "–", "–",
                              area_text(pi * width * width / 4, drafting.unit())});
    }
    return table;
}

/// The wall's width; that of its foot too where that is another.
std::string wall_text(const Drafting& drafting, const DomeForm& dome) {
    const double foot = base_outside(dome) - dome.profile.half_span;
    return drafting.length(dome.width) +
           (foot > dome.width + 1e-6 ? "; foot " + drafting.length(foot) : "");
}

Table dome_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Dome"}, Align::left, true},
                     {{"Pole east"}, Align::right, false},
                     {{"Pole north"}, Align::right, false},
                     {{"Inside", "diameter"}, Align::right, false},
                     {{"Profile"}, Align::left, false},
                     {{"Springline"}, Align::right, false},
                     {{"Rise"}, Align::right, false},
                     {{"Apex"}, Align::right, false},
                     {{"Top of wall"}, Align::right, false},
                     {{"Wall"}, Align::right, false},
                     {{"Clear height", "at the pole"}, Align::right, false}};
    for (const DomeForm& dome : drafting.schedule().building.domes) {
        const auto room = std::find_if(drafting.plan.headroom.begin(), drafting.plan.headroom.end(),
                                       [&](const Headroom& one) { return one.dome == dome.id; });
        const bool known = room != drafting.plan.headroom.end();
        table.rows.push_back({dome.id, drafting.length(dome.at.x()), drafting.length(dome.at.y()),
                              drafting.length(2 * dome.profile.half_span), word(dome.profile.kind),
                              drafting.length(dome.springline), drafting.length(dome.profile.rise),
                              drafting.length(dome.apex()), drafting.length(dome.top()),
                              wall_text(drafting, dome),
                              known ? drafting.length(room->at_pole) : "–"});
    }
    return table;
}

/// What no two rooms share: domes in open plan are one.
Table room_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Room"}, Align::left, true},
                     {{"Of"}, Align::left, false},
                     {{"Clear floor"}, Align::right, false},
                     {{"Clear height", "at its highest"}, Align::right, false},
                     {{"Clear volume"}, Align::right, false}};
    for (const BuildingRoom& room :
         building_rooms(drafting.schedule().building, drafting.plan.design.finish.inside_plaster)) {
        std::string of = room.tunnel.empty() ? "" : "tunnel";
        for (const std::string& dome : room.domes)
            of += (of.empty() ? "" : " + ") + dome;
        table.rows.push_back(
            {room.id, of, room.floor.decided ? area_text(room.floor.area, drafting.unit()) : "–",
             drafting.length(room.height), volume_text(room.volume, drafting.unit())});
    }
    return table;
}

Table tunnel_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Tunnel"}, Align::left, true},
                     {{"From"}, Align::left, false},
                     {{"To"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Inside", "width"}, Align::right, false},
                     {{"Profile"}, Align::left, false},
                     {{"Springline"}, Align::right, false},
                     {{"Rise"}, Align::right, false},
                     {{"Crown"}, Align::right, false},
                     {{"Top of wall"}, Align::right, false},
                     {{"Wall"}, Align::right, false},
                     {{"Reach, from", "the pole"}, Align::right, false}};
    for (const TunnelForm& tunnel : drafting.schedule().building.tunnels)
        table.rows.push_back({tunnel.id, tunnel.from,
                              !tunnel.to.empty() ? tunnel.to
                              : tunnel.end_wall  ? "end wall"
                                                 : "open",
                              degrees_text(turned_into_circle(tunnel.bearing.degrees)),
                              drafting.length(2 * tunnel.profile.half_span),
                              word(tunnel.profile.kind), drafting.length(tunnel.springline),
                              drafting.length(tunnel.profile.rise),
                              drafting.length(tunnel.springline + tunnel.profile.rise),
                              drafting.length(tunnel.top()), drafting.length(tunnel.width),
                              drafting.length(tunnel.reach)});
    return table;
}

Table sleeve_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Sleeve"}, Align::left, true},
                     {{"In"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Diameter"}, Align::right, false},
                     {{"Its centre, or the joint that it lies on"}, Align::right, false}};
    for (const SleevePlan& sleeve : drafting.schedule().sleeves)
        table.rows.push_back({sleeve.form.id, sleeve.form.in,
                              degrees_text(turned_into_circle(sleeve.form.bearing.degrees)),
                              drafting.length(sleeve.form.diameter),
                              drafting.length(std::abs(sleeve.mark())) +
                                  (sleeve.mark() < 0 ? " below the floor" : " above the floor")});
    return table;
}

/// Piers; the built-out jambs of an opening are of its own.
Table buttress_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Buttress"}, Align::left, true},
                     {{"On"}, Align::left, false},
                     {{"Bearing"}, Align::right, false},
                     {{"Width"}, Align::right, false},
                     {{"Top of wall"}, Align::right, false},
                     {{"Projection", "at the floor"}, Align::right, false},
                     {{"Projection", "at the top"}, Align::right, false},
                     {{"Outer face", "from the pole"}, Align::right, false},
                     {{"Last course"}, Align::right, false}};
    for (const ButtressForm& pier : drafting.schedule().building.buttresses)
        if (!pier.reveal)
            table.rows.push_back(
                {pier.id, pier.dome, degrees_text(turned_into_circle(pier.bearing.degrees)),
                 drafting.length(2 * pier.half_width), drafting.length(pier.top),
                 drafting.length(pier.projection), drafting.length(pier.projection_top),
                 drafting.length(outer_face(pier, 0)), std::to_string(pier.last_course)});
    return table;
}

} // namespace

std::vector<Sheet> opening_schedule(const Drafting& drafting) {
    bool first = true;
    const auto start = [&] {
        Page page = start_drawing(
            drafting, std::exchange(first, false) ? "Schedules" : "Schedules, continued", "");
        page.body = grown(page.body, -2);
        return page;
    };
    Flow flow(drafting, start, sizes::body);
    flow.table("Openings", opening_table(drafting), sizes::body, sizes::least, true);
    flow.paragraph(
        "Rough sizes are of the hole between the tubes, as its form is made. Clear sizes "
        "are within frame and plaster: the clear area is what light and air pass.");
    flow.space(4);
    flow.table("Domes", dome_table(drafting), sizes::body, sizes::least, true);
    const auto table = [&](const char* heading, const Table& rows) {
        if (rows.rows.empty())
            return;
        flow.space(4);
        flow.table(heading, rows, sizes::body, sizes::least, true);
    };
    table("Rooms, inside the plaster", room_table(drafting));
    table("Tunnels", tunnel_table(drafting));
    table("Buttresses", buttress_table(drafting));
    table("Sleeves", sleeve_table(drafting));
    return flow.finish();
}

} // namespace coilwright
