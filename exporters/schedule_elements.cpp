#include "exporters/schedule_elements.hpp"

#include "geometry/plan/section.hpp"

namespace coilwright {
namespace {

Json json_tube_type(const TubeType& tube, double course_height) {
    return {{"id", tube.id},
            {"lay_flat", json_number(tube.lay_flat)},
            {"tamped_width", json_number(tamped_width(tube, course_height))},
            {"roll", json_number(tube.roll)}};
}

Json json_profile(const Profile& profile) {
    Json json{{"kind", word(profile.kind)},
              {"half_span", json_number(profile.half_span)},
              {"rise", json_number(profile.rise)},
              {"radius", json_number(profile.radius)},
              {"points", Json::array()}};
    for (const Profile::Knot& knot : profile.knots)
        json["points"].push_back({json_number(knot.height), json_number(knot.half_width)});
    return json;
}

Json json_dome(const DomeForm& dome) {
    return {{"id", dome.id},
            {"at", json_point(dome.at)},
            {"use", word(dome.use)},
            {"springline", json_number(dome.springline)},
            {"profile", json_profile(dome.profile)},
            {"width", json_number(dome.width)},
            {"course_height", json_number(dome.course_height)},
            {"foundation", dome.foundation},
            {"datum_bearing", json_bearing(dome.datum)},
            {"chain_height", json_number(dome.chain_height)},
            {"last_ring", dome.last_ring},
            {"last_ring_radius", json_number(dome.last_ring_radius)},
            {"curb_courses", dome.curb_courses},
            {"cap_courses", dome.cap_courses},
            {"bottom", json_number(dome.bottom())},
            {"ceiling", json_number(dome.ceiling())},
            {"apex", json_number(dome.apex())},
            {"top", json_number(dome.top())},
            {"tube", dome.tube},
            {"lower_tube", dome.lower_width > 0 ? Json(dome.lower_tube) : Json(nullptr)},
            {"lower_top", dome.lower_width > 0 ? json_number(dome.lower_top) : Json(nullptr)},
            {"second_wythe_top",
             dome.second_wythe ? json_number(dome.second_wythe_top) : Json(nullptr)}};
}

Json json_opening(const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
    const bool in_side = form.in_tunnel && form.side != TunnelSide::end;
    return {{"id", form.id},
            {"in", form.in},
            {"use", word(form.use)},
            {"bearing", json_bearing(form.bearing)},
            {"outline",
             {{"half_width", json_number(form.half_width)},
              {"sill", json_number(form.sill)},
              {"springing", json_number(form.springing)},
              {"top", json_number(form.top)},
              {"head", word(form.head_kind)},
              {"profile", form.head ? json_profile(*form.head) : Json(nullptr)}}},
            {"first_course", opening.first_course},
            {"last_course", opening.last_course},
            {"clear_width", json_number(opening.clear_width)},
            {"clear_height", json_number(opening.clear_height)},
            {"form_depth", json_number(opening.least_form_depth)},
            {"frame_band", opening.form.niche_depth > 0
                               ? Json(nullptr)
                               : Json{json_number(opening.frame_band_start),
                                      json_number(opening.frame_band_end)}},
            {"frame_depth", json_number(opening.frame_depth)},
            {"strike_after_course", opening.strike_after_course},
            {"side", form.in_tunnel ? Json(word(form.side)) : Json(nullptr)},
            {"along", in_side ? json_number(form.along) : Json(nullptr)},
            {"origin", json_point(form.origin)},
            {"niche_depth", form.niche_depth > 0 ? json_number(form.niche_depth) : Json(nullptr)},
            {"last_form", opening.last_form},
            {"rained_on", json_number(opening.rained_on)}};
}

Json json_fan(const Fan& fan) {
    return {{"opening", fan.opening},
            {"set_before_course", fan.set_before_course},
            {"count", fan.count},
            {"depth", json_number(fan.depth)},
            {"outer_width", json_number(fan.outer_width)},
            {"inner_width", json_number(fan.inner_width)},
            {"outer_arc", json_number(fan.outer_arc)},
            {"inner_arc", json_number(fan.inner_arc)},
            {"keystone_outer", json_number(fan.keystone_outer)},
            {"keystone_inner", json_number(fan.keystone_inner)},
            {"face_area", json_number(fan.face_area)},
            {"fill_volume", json_number(fan.fill_volume)}};
}

Json json_sleeve(const SleevePlan& sleeve) {
    const SleeveForm& form = sleeve.form;
    return {{"id", form.id},
            {"in", form.in},
            {"origin", json_point(form.origin)},
            {"bearing", json_bearing(form.bearing)},
            {"height", json_number(form.height)},
            {"diameter", json_number(form.diameter)},
            {"side", form.in_tunnel ? Json(word(form.side)) : Json(nullptr)},
            {"along", form.in_tunnel ? json_number(form.along) : Json(nullptr)},
            {"course", sleeve.course},
            {"stops_tubes", sleeve.stops_tubes},
            {"joint", sleeve.stops_tubes ? Json(nullptr) : json_number(sleeve.joint)}};
}

Json json_lintel(const Lintel& lintel) {
    return {{"opening", lintel.opening},
            {"kind", word(lintel.kind)},
            {"bottom", json_number(lintel.bottom)},
            {"length", json_number(lintel.length)},
            {"depth", json_number(lintel.depth)},
            {"width", json_number(lintel.width)},
            {"bearing", json_number(lintel.bearing)},
            {"first_course", lintel.first_course},
            {"last_course", lintel.last_course},
            {"packing", json_number(lintel.packing)},
            {"centre_distance", json_number(lintel.centre_distance)},
            {"bearing_area", json_number(lintel.bearing_area)},
            {"shows_inside", json_number(lintel.shows_inside)}};
}

Json json_tunnel(const TunnelForm& tunnel, const VaultForm& form) {
    return {{"id", tunnel.id},
            {"from", tunnel.from},
            {"to", tunnel.to.empty() ? Json(nullptr) : Json(tunnel.to)},
            {"at", json_point(tunnel.origin)},
            {"bearing", json_bearing(tunnel.bearing)},
            {"reach", json_number(tunnel.reach)},
            {"springline", json_number(tunnel.springline)},
            {"profile", json_profile(tunnel.profile)},
            {"tube", tunnel.tube},
            {"width", json_number(tunnel.width)},
            {"end", tunnel.end_wall ? "wall" : "open"},
            {"wall", tunnel.wall_stays ? "stays" : "opened"},
            {"side_courses", tunnel.side_courses},
            {"crown_courses", tunnel.crown_courses},
            {"bottom", json_number(tunnel.bottom())},
            {"apex", json_number(tunnel.crown())},
            {"top", json_number(tunnel.top())},
            {"set_before_course", form.set_before_course},
            {"strike_after_course", form.strike_after_course}};
}

Json json_pier(const ButtressForm& pier) {
    return {{"id", pier.id},
            {"buttress", pier.table},
            {"dome", pier.dome},
            {"at", json_point(pier.origin)},
            {"bearing", json_bearing(pier.bearing)},
            {"width", json_number(2 * pier.half_width)},
            {"tubes", pier.tubes},
            {"base_outside", json_number(pier.base_outside)},
            {"projection", json_number(pier.projection)},
            {"projection_top", json_number(pier.projection_top)},
            {"height", json_number(pier.height)},
            {"last_course", pier.last_course},
            {"bottom", json_number(pier.bottom)},
            {"top", json_number(pier.top)}};
}

/// The piers that are reveals, or those that are not.
std::vector<ButtressForm> piers_of(const BuildingForm& building, bool reveals) {
    std::vector<ButtressForm> piers;
    for (const ButtressForm& pier : building.buttresses)
        if (pier.reveal.has_value() == reveals)
            piers.push_back(pier);
    return piers;
}

Json json_reveal(const ButtressForm& pier) {
    return {{"id", pier.id},
            {"opening", pier.reveal->opening.id},
            {"dome", pier.dome},
            {"at", json_point(pier.origin)},
            {"bearing", json_bearing(pier.bearing)},
            {"width", json_number(2 * pier.half_width)},
            {"outside", json_number(pier.base_outside)},
            {"first_course", pier.reveal->first_course},
            {"last_course", pier.last_course},
            {"bottom", json_number(pier.bottom)},
            {"top", json_number(pier.top)}};
}

Json json_join(const JoinForm& join) {
    return {{"id", join.id},
            {"between", {join.first, join.second}},
            {"keep", join.keep.empty() ? "neither" : join.keep},
            {"bond", join.keep.empty() ? Json(nullptr)
                     : join.bonded     ? "alternate"
                                       : "butt"}};
}

template <typename Element, typename Write>
Json json_list(const std::vector<Element>& elements, Write write) {
    Json list = Json::array();
    for (const Element& element : elements)
        list.push_back(write(element));
    return list;
}

} // namespace

Json json_elements(const BuildingPlan& plan) {
    const Schedule& schedule = plan.schedule;
    const BuildingForm& building = schedule.building;
    Json tunnels = Json::array();
    for (std::size_t i = 0; i < building.tunnels.size(); ++i)
        tunnels.push_back(json_tunnel(building.tunnels[i], schedule.vault_forms[i]));
    const auto tube = [&](const TubeType& type) {
        return json_tube_type(type, schedule.course_height);
    };
    return {{"tubes", json_list(plan.design.tubes, tube)},
            {"domes", json_list(building.domes, json_dome)},
            {"openings", json_list(schedule.openings, json_opening)},
            {"tunnels", std::move(tunnels)},
            {"buttresses", json_list(piers_of(building, false), json_pier)},
            {"reveals", json_list(piers_of(building, true), json_reveal)},
            {"joins", json_list(building.joins, json_join)},
            {"fans", json_list(schedule.fans, json_fan)},
            {"lintels", json_list(schedule.lintels, json_lintel)},
            {"sleeves", json_list(schedule.sleeves, json_sleeve)}};
}

Json json_fitted(const Fitted& fitted) {
    return {{"dome", fitted.dome},
            {"key", fitted.key},
            {"value", json_number(fitted.value)},
            {"courses", fitted.courses},
            {"wish", fitted.wish},
            {"reached", json_number(fitted.reached)},
            {"reached_one_less", json_number(fitted.reached_one_less)},
            {"text", fitted.text}};
}

Json json_headroom(const Headroom& headroom) {
    Json rows = Json::array();
    for (const HeadroomRow& row : headroom.rows)
        rows.push_back({{"height", json_number(row.height)},
                        {"radius", json_number(row.radius)},
                        {"area", json_number(row.area)},
                        {"square", json_number(row.square)}});
    return {{"dome", headroom.dome},
            {"at_pole", json_number(headroom.at_pole)},
            {"floor_area", json_number(headroom.floor_area)},
            {"rows", std::move(rows)},
            {"verdict", json_finding(headroom.verdict)}};
}

Json json_headroom(const TunnelHeadroom& headroom) {
    Json rows = Json::array();
    for (const TunnelHeadroomRow& row : headroom.rows)
        rows.push_back({{"height", json_number(row.height)},
                        {"width", json_number(row.width)},
                        {"area", json_number(row.area)}});
    return {{"tunnel", headroom.tunnel},
            {"at_middle", json_number(headroom.at_middle)},
            {"width", json_number(headroom.width)},
            {"length", json_number(headroom.length)},
            {"floor_area", json_number(headroom.floor_area)},
            {"rows", std::move(rows)}};
}

} // namespace coilwright
