#include "tests/exporters/schedule_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

void check_tunnel(const Json& json, const TunnelForm& tunnel, const VaultForm& form) {
    CHECK(json.at("id") == tunnel.id);
    CHECK(json.at("from") == tunnel.from);
    CHECK((tunnel.to.empty() ? json.at("to").is_null() : json.at("to") == tunnel.to));
    CHECK(same_point(json.at("at"), tunnel.origin));
    CHECK(same_bearing(json.at("bearing"), tunnel.bearing.degrees));
    CHECK(same(json.at("reach"), tunnel.reach));
    CHECK(same(json.at("springline"), tunnel.springline));
    CHECK(same(json.at("profile").at("half_span"), tunnel.profile.half_span));
    CHECK(same(json.at("profile").at("rise"), tunnel.profile.rise));
    CHECK(json.at("end") == (tunnel.end_wall ? "wall" : "open"));
    CHECK(json.at("wall") == (tunnel.wall_stays ? "stays" : "opened"));
    CHECK(json.at("side_courses") == tunnel.side_courses);
    CHECK(json.at("crown_courses") == tunnel.crown_courses);
    CHECK(same(json.at("top"), tunnel.top()));
    CHECK(json.at("set_before_course") == form.set_before_course);
    CHECK(json.at("strike_after_course") == form.strike_after_course);
}

void check_pier(const Json& json, const ButtressForm& pier) {
    CHECK(json.at("id") == pier.id);
    CHECK(json.at("buttress") == pier.table);
    CHECK(json.at("dome") == pier.dome);
    CHECK(same_bearing(json.at("bearing"), pier.bearing.degrees));
    CHECK(same(json.at("width"), 2 * pier.half_width));
    CHECK(json.at("tubes") == pier.tubes);
    CHECK(same(json.at("base_outside"), pier.base_outside));
    CHECK(same(json.at("projection"), pier.projection));
    CHECK(same(json.at("projection_top"), pier.projection_top));
    CHECK(json.at("last_course") == pier.last_course);
    CHECK(same(json.at("top"), pier.top));
}

void check_reveal(const Json& json, const ButtressForm& pier) {
    CHECK(json.at("id") == pier.id);
    CHECK(json.at("opening") == pier.reveal->opening.id);
    CHECK(json.at("dome") == pier.dome);
    CHECK(same_bearing(json.at("bearing"), pier.bearing.degrees));
    CHECK(same(json.at("width"), 2 * pier.half_width));
    CHECK(same(json.at("outside"), pier.base_outside));
    CHECK(json.at("first_course") == pier.reveal->first_course);
    CHECK(json.at("last_course") == pier.last_course);
    CHECK(same(json.at("bottom"), pier.bottom));
    CHECK(same(json.at("top"), pier.top));
}

void check_lintel(const Json& json, const Lintel& lintel) {
    CHECK(json.at("opening") == lintel.opening);
    CHECK(json.at("kind") == word(lintel.kind));
    CHECK(same(json.at("bottom"), lintel.bottom));
    CHECK(same(json.at("length"), lintel.length));
    CHECK(same(json.at("depth"), lintel.depth));
    CHECK(same(json.at("width"), lintel.width));
    CHECK(same(json.at("bearing"), lintel.bearing));
    CHECK(json.at("first_course") == lintel.first_course);
    CHECK(json.at("last_course") == lintel.last_course);
    CHECK(same(json.at("packing"), lintel.packing));
    CHECK(same(json.at("centre_distance"), lintel.centre_distance));
    CHECK(same(json.at("bearing_area"), lintel.bearing_area));
    CHECK(same(json.at("shows_inside"), lintel.shows_inside));
}

void check_openings(const Json& json, const Schedule& schedule) {
    REQUIRE(json.at("elements").at("openings").size() == schedule.openings.size());
    for (std::size_t k = 0; k < schedule.openings.size(); ++k) {
        const OpeningPlan& opening = schedule.openings[k];
        const Json& written = json.at("elements").at("openings")[k];
        CHECK(written.at("id") == opening.form.id);
        CHECK(same(written.at("outline").at("half_width"), opening.form.half_width));
        CHECK(same(written.at("outline").at("top"), opening.form.top));
        CHECK(same(written.at("clear_width"), opening.clear_width));
        CHECK(same(written.at("form_depth"), opening.least_form_depth));
        const Json& band = written.at("frame_band");
        CHECK(band.is_null() == (opening.form.niche_depth > 0));
        if (!band.is_null()) {
            CHECK(same(band.at(0), opening.frame_band_start));
            CHECK(same(band.at(1), opening.frame_band_end));
        }
        CHECK(same_point(written.at("origin"), opening.form.origin));
        CHECK(written.at("last_form") == opening.last_form);
        CHECK(same(written.at("rained_on"), opening.rained_on));
        CHECK(written.at("niche_depth").is_null() == (opening.form.niche_depth == 0));
        if (opening.form.niche_depth > 0)
            CHECK(same(written.at("niche_depth"), opening.form.niche_depth));
        if (opening.form.in_tunnel) {
            CHECK(written.at("side") == word(opening.form.side));
            if (opening.form.side != TunnelSide::end)
                CHECK(same(written.at("along"), opening.form.along));
        } else {
            CHECK(written.at("side").is_null());
            CHECK(written.at("along").is_null());
        }
        // A form is struck after the course that the opening names, and after no other.
        for (const Json& course : json.at("courses")) {
            const Json& struck = course.at("strike");
            const bool here =
                std::find(struck.begin(), struck.end(), opening.form.id) != struck.end();
            CHECK(here == (course.at("number") == opening.strike_after_course));
        }
    }
}

} // namespace

void check_elements(const Json& json, const Schedule& schedule) {
    check_openings(json, schedule);
    const Json& elements = json.at("elements");
    const BuildingForm& building = schedule.building;
    REQUIRE(elements.at("tunnels").size() == building.tunnels.size());
    for (std::size_t k = 0; k < building.tunnels.size(); ++k) {
        check_tunnel(elements.at("tunnels")[k], building.tunnels[k], schedule.vault_forms.at(k));
        const int crown = schedule.vault_forms[k].strike_after_course;
        const Json& struck =
            json.at("courses").at(static_cast<std::size_t>(crown) - 1).at("strike");
        CHECK(std::find(struck.begin(), struck.end(), building.tunnels[k].id) != struck.end());
    }
    const Json &buttresses = elements.at("buttresses"), &reveals = elements.at("reveals");
    REQUIRE(buttresses.size() + reveals.size() == building.buttresses.size());
    std::size_t of_buttress = 0, of_reveal = 0;
    for (const ButtressForm& pier : building.buttresses)
        if (pier.reveal)
            check_reveal(reveals.at(of_reveal++), pier);
        else
            check_pier(buttresses.at(of_buttress++), pier);
    REQUIRE(elements.at("joins").size() == building.joins.size());
    for (std::size_t k = 0; k < building.joins.size(); ++k) {
        const JoinForm& join = building.joins[k];
        CHECK(elements.at("joins")[k] == Json{{"id", join.id},
                                              {"between", {join.first, join.second}},
                                              {"keep", join.keep.empty() ? "neither" : join.keep},
                                              {"bond", join.keep.empty() ? Json(nullptr)
                                                       : join.bonded     ? Json("alternate")
                                                                         : Json("butt")}});
    }
    REQUIRE(elements.at("fans").size() == schedule.fans.size());
    for (std::size_t k = 0; k < schedule.fans.size(); ++k) {
        const Json& fan = elements.at("fans")[k];
        CHECK(fan.at("opening") == schedule.fans[k].opening);
        CHECK(fan.at("count") == schedule.fans[k].count);
        CHECK(fan.at("set_before_course") == schedule.fans[k].set_before_course);
        CHECK(same(fan.at("depth"), schedule.fans[k].depth));
        CHECK(same(fan.at("outer_width"), schedule.fans[k].outer_width));
        CHECK(same(fan.at("inner_width"), schedule.fans[k].inner_width));
        CHECK(same(fan.at("outer_arc"), schedule.fans[k].outer_arc));
        CHECK(same(fan.at("keystone_outer"), schedule.fans[k].keystone_outer));
        CHECK(same(fan.at("keystone_inner"), schedule.fans[k].keystone_inner));
        CHECK(same(fan.at("face_area"), schedule.fans[k].face_area));
        CHECK(same(fan.at("fill_volume"), schedule.fans[k].fill_volume));
    }
    REQUIRE(elements.at("sleeves").size() == schedule.sleeves.size());
    for (std::size_t k = 0; k < schedule.sleeves.size(); ++k) {
        const SleevePlan& sleeve = schedule.sleeves[k];
        const Json& written = elements.at("sleeves")[k];
        CHECK(written.at("id") == sleeve.form.id);
        CHECK(written.at("in") == sleeve.form.in);
        CHECK(same_point(written.at("origin"), sleeve.form.origin));
        CHECK(same_bearing(written.at("bearing"), sleeve.form.bearing.degrees));
        CHECK(same(written.at("height"), sleeve.form.height));
        CHECK(same(written.at("diameter"), sleeve.form.diameter));
        CHECK(written.at("course") == sleeve.course);
        CHECK(written.at("stops_tubes") == sleeve.stops_tubes);
        CHECK(written.at("joint").is_null() == sleeve.stops_tubes);
        CHECK(written.at("side").is_null() == !sleeve.form.in_tunnel);
    }
    REQUIRE(elements.at("lintels").size() == schedule.lintels.size());
    for (std::size_t k = 0; k < schedule.lintels.size(); ++k)
        check_lintel(elements.at("lintels")[k], schedule.lintels[k]);
    for (std::size_t k = 0; k < building.domes.size(); ++k) {
        const Json& dome = elements.at("domes")[k];
        CHECK(dome.at("tube") == building.domes[k].tube);
        CHECK(dome.at("lower_tube").is_null() == (building.domes[k].lower_width == 0));
        if (building.domes[k].lower_width > 0)
            CHECK(same(dome.at("lower_top"), building.domes[k].lower_top));
        CHECK(dome.at("second_wythe_top").is_null() == !building.domes[k].second_wythe);
    }
}

} // namespace coilwright
