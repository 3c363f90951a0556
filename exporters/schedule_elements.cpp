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
            {"top", json_number(dome.top())}};
}

Json json_opening(const OpeningPlan& opening) {
    const OpeningForm& form = opening.form;
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
            {"frame_band",
             {json_number(opening.frame_band_start), json_number(opening.frame_band_end)}},
            {"frame_depth", json_number(opening.frame_depth)},
            {"strike_after_course", opening.strike_after_course}};
}

} // namespace

Json json_elements(const BuildingPlan& plan) {
    Json tubes = Json::array(), domes = Json::array(), openings = Json::array();
    for (const TubeType& tube : plan.design.tubes)
        tubes.push_back(json_tube_type(tube, plan.schedule.course_height));
    for (const DomeForm& dome : plan.schedule.building.domes)
        domes.push_back(json_dome(dome));
    for (const OpeningPlan& opening : plan.schedule.openings)
        openings.push_back(json_opening(opening));
    return {{"tubes", std::move(tubes)},
            {"domes", std::move(domes)},
            {"openings", std::move(openings)}};
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

} // namespace coilwright
