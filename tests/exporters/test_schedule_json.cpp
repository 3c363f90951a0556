#include "exporters/schedule_json.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <nlohmann/json.hpp>
#include <set>

namespace coilwright {
namespace {

using Json = nlohmann::ordered_json;

std::vector<std::string> keys_of(const Json& object) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : object.items())
        keys.push_back(key);
    return keys;
}

// The keys of the contract come first, in its order; more may follow.
void check_contract(const Json& object, const std::vector<std::string>& contract) {
    std::vector<std::string> keys = keys_of(object);
    REQUIRE(keys.size() >= contract.size());
    keys.resize(contract.size());
    CHECK(keys == contract);
}

// Equal after rounding to 1e-6.
bool same(const Json& written, double value) {
    return std::abs(written.get<double>() - value) <= 0.5e-6 + 1e-12;
}
bool same_bearing(const Json& written, double value) {
    const double turn = std::remainder(written.get<double>() - value, 360);
    return written.get<double>() >= 0 && std::abs(turn) <= 0.5e-6 + 1e-12;
}

void check_run(const Json& json, const Run& run, RingKind kind) {
    CHECK(json.at("id") == run.id);
    CHECK(same_bearing(json.at("start_bearing"), run.start_bearing));
    CHECK(json.at("start_bearing") < 360);
    CHECK(same_bearing(json.at("end_bearing"), run.end_bearing));
    const double turn =
        json.at("end_bearing").get<double>() - json.at("start_bearing").get<double>();
    CHECK(turn == Approx(run.end_bearing - run.start_bearing).margin(1.1e-6));
    CHECK(same(json.at("length"), run.length));
    CHECK(json.at("closed") == run.closed);
    CHECK(json.at("start_by") == run.start_by);
    CHECK(json.at("end_by") == run.end_by);
    REQUIRE(json.at("tubes").size() == run.tubes.size());
    for (std::size_t k = 0; k < run.tubes.size(); ++k) {
        const Json& tube = json.at("tubes")[k];
        CHECK(tube.at("id") == run.tubes[k].id);
        CHECK(same(tube.at("length"), run.tubes[k].length));
        CHECK(same(tube.at("outer_length"), run.tubes[k].outer_length));
        CHECK(same(tube.at("cut_length"), run.tubes[k].cut_length));
        if (kind == RingKind::cap) {
            CHECK(tube.at("start_bearing").is_null());
            CHECK(tube.at("end_bearing").is_null());
        } else {
            CHECK(same_bearing(tube.at("start_bearing"), run.tubes[k].start_bearing));
            CHECK(same_bearing(tube.at("end_bearing"), run.tubes[k].end_bearing));
            CHECK(tube.at("start_bearing") >= json.at("start_bearing"));
            CHECK(tube.at("end_bearing") <= json.at("end_bearing"));
        }
        CHECK(tube.at("lap_short") == run.tubes[k].lap_short);
    }
}

void check_cut(const Json& json, const Cut& cut) {
    CHECK(json.at("by") == cut.by);
    CHECK(json.at("letter") == cut.letter);
    CHECK(json.at("side") == (cut.side == Side::left ? "left" : "right"));
    CHECK(json.at("short_way") == (cut.short_way == Side::left ? "left" : "right"));
    CHECK(same(json.at("half_width"), cut.half_width));
    CHECK(same_bearing(json.at("inside_bearing"), cut.inside_bearing));
    CHECK(same_bearing(json.at("centre_bearing"), cut.centre_bearing));
    CHECK(same_bearing(json.at("outside_bearing"), cut.outside_bearing));
    CHECK(same(json.at("inside_arc_from_datum"), cut.inside_arc_from_datum));
    CHECK(same(json.at("short_arc"), cut.short_arc));
    CHECK(same(json.at("chord"), cut.chord));
}

void check_ring(const Json& json, const Ring& ring) {
    CHECK(json.at("dome") == ring.dome);
    CHECK(json.at("kind") == (ring.kind == RingKind::ring ? "ring" : "cap"));
    CHECK(json.at("curb") == ring.curb);
    CHECK(same(json.at("inside_radius"), ring.inside_radius));
    CHECK(same(json.at("centre_radius"), ring.centre_radius));
    CHECK(same(json.at("outside_radius"), ring.outside_radius));
    CHECK(same(json.at("chain"), ring.chain));
    CHECK(same(json.at("pole_face"), ring.pole_face));
    CHECK(same(json.at("step_in"), ring.step_in));
    CHECK(same(json.at("bearing_width"), ring.bearing_width));
    CHECK(json.at("wythe") == ring.wythe);
    CHECK(json.at("tube") == ring.tube);
    CHECK(same(json.at("width"), ring.width));
    CHECK(same(json.at("fill_volume"), ring.fill_volume));
    if (std::isfinite(ring.radius_per_height))
        CHECK(same(json.at("radius_per_height"), ring.radius_per_height));
    else
        CHECK(json.at("radius_per_height").is_null());
    REQUIRE(json.at("runs").size() == ring.runs.size());
    for (std::size_t k = 0; k < ring.runs.size(); ++k)
        check_run(json.at("runs")[k], ring.runs[k], ring.kind);
    REQUIRE(json.at("cuts").size() == ring.cuts.size());
    for (std::size_t k = 0; k < ring.cuts.size(); ++k)
        check_cut(json.at("cuts")[k], ring.cuts[k]);
}

bool same_point(const Json& written, const Vec2& point) {
    return same(written.at(0), point.x()) && same(written.at(1), point.y());
}

void check_straight(const Json& json, const Straight& straight) {
    CHECK(json.at("of") == straight.of);
    CHECK(json.at("part") == word(straight.part));
    CHECK(same(json.at("length"), straight.length));
    CHECK(same_point(json.at("start"), straight.start));
    CHECK(same_point(json.at("end"), straight.end));
    CHECK(same(json.at("start_distance"), straight.start_distance));
    CHECK(same(json.at("end_distance"), straight.end_distance));
    CHECK(json.at("start_by") == straight.start_by);
    CHECK(json.at("end_by") == straight.end_by);
    CHECK(json.at("tube") == straight.tube);
    CHECK(same(json.at("width"), straight.width));
    REQUIRE(json.at("tubes").size() == straight.tubes.size());
    for (std::size_t k = 0; k < straight.tubes.size(); ++k) {
        CHECK(json.at("tubes")[k].at("id") == straight.tubes[k].id);
        CHECK(same(json.at("tubes")[k].at("length"), straight.tubes[k].length));
        CHECK(same(json.at("tubes")[k].at("cut_length"), straight.tubes[k].cut_length));
        CHECK(json.at("tubes")[k].at("lap_short") == straight.tubes[k].lap_short);
    }
}

// The area that the written outline holds, by Green's theorem with its own arcs: what a reader of the
// file would reckon, from nothing but the file.
double area_of(const Json& loop) {
    double twice = 0;
    for (const Json& edge : loop.at("edges")) {
        const Vec2 from(edge.at("from").at(0), edge.at("from").at(1));
        const Vec2 to(edge.at("to").at(0), edge.at("to").at(1));
        twice += from.x() * to.y() - to.x() * from.y();
        if (edge.at("kind") == "line")
            continue;
        // The segment between the chord and the arc.
        const Vec2 centre(edge.at("centre").at(0), edge.at("centre").at(1));
        const double radius = edge.at("radius");
        CHECK((from - centre).norm() == Approx(radius).margin(3e-6));
        CHECK((to - centre).norm() == Approx(radius).margin(3e-6));
        const double start = std::atan2(from.y() - centre.y(), from.x() - centre.x());
        const double end = std::atan2(to.y() - centre.y(), to.x() - centre.x());
        double sweep = edge.at("clockwise").get<bool>() ? start - end : end - start;
        while (sweep <= 0)
            sweep += 2 * pi;
        const double segment = radius * radius * (sweep - std::sin(sweep));
        twice += edge.at("clockwise").get<bool>() ? -segment : segment;
    }
    return twice / 2;
}

void check_region(const Json& json, const Region& region) {
    REQUIRE(json.size() == region.loops.size());
    double area = 0;
    for (std::size_t k = 0; k < region.loops.size(); ++k) {
        CHECK(same(json[k].at("area"), region.loops[k].area));
        REQUIRE(json[k].at("edges").size() == region.loops[k].edges.size());
        CHECK(area_of(json[k]) == Approx(region.loops[k].area).margin(2e-4));
        area += area_of(json[k]);
        const Json& edges = json[k].at("edges");
        for (std::size_t e = 0; e < edges.size(); ++e)
            CHECK(edges[e].at("to") == edges[(e + 1) % edges.size()].at("from"));
    }
    CHECK(area == Approx(region.area).margin(4e-4));
}

void check_course(const Json& json, const Course& course) {
    CAPTURE(course.number);
    CHECK(json.at("number") == course.number);
    CHECK(same(json.at("bottom"), course.bottom));
    CHECK(same(json.at("middle"), course.middle));
    CHECK(same(json.at("top"), course.top));
    CHECK(json.at("below_floor") == course.below_floor);
    REQUIRE(json.at("straights").size() == course.straights.size());
    for (std::size_t k = 0; k < course.straights.size(); ++k)
        check_straight(json.at("straights")[k], course.straights[k]);
    check_region(json.at("region"), course.wall);
    CHECK(same(json.at("wall_area"), course.wall_area));
    CHECK(same(json.at("fill_volume"), course.fill_volume));
    CHECK(same(json.at("tube_length"), course.tube_length));
    CHECK(same(json.at("cut_length"), course.cut_length));
    CHECK(same(json.at("wire_length"), course.wire_length));
    REQUIRE(json.at("rings").size() == course.rings.size());
    for (std::size_t k = 0; k < course.rings.size(); ++k)
        check_ring(json.at("rings")[k], course.rings[k]);
    const auto check_notes = [](const Json& notes, const std::vector<SetNote>& wanted) {
        REQUIRE(notes.size() == wanted.size());
        for (std::size_t k = 0; k < wanted.size(); ++k)
            CHECK(notes[k] == Json{{"element", wanted[k].element},
                                   {"what", wanted[k].what},
                                   {"text", wanted[k].text}});
    };
    check_notes(json.at("set").at("before"), course.before);
    check_notes(json.at("set").at("after"), course.after);
}

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

// What stands beside the domes.
void check_additions(const Json& json, const Schedule& schedule) {
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
    REQUIRE(elements.at("buttresses").size() == building.buttresses.size());
    for (std::size_t k = 0; k < building.buttresses.size(); ++k)
        check_pier(elements.at("buttresses")[k], building.buttresses[k]);
    REQUIRE(elements.at("joins").size() == building.joins.size());
    for (std::size_t k = 0; k < building.joins.size(); ++k) {
        const JoinForm& join = building.joins[k];
        CHECK(elements.at("joins")[k] == Json{{"id", join.id},
                                              {"between", {join.first, join.second}},
                                              {"keep", join.keep.empty() ? "neither" : join.keep}});
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

void check_schedule(const BuildingPlan& plan) {
    const Json json = Json::parse(schedule_json(plan));
    CHECK(json.at("format") == "coilwright-schedule");
    CHECK(json.at("version") == 1);
    CHECK(same(json.at("course_height"), plan.schedule.course_height));
    const Totals& totals = plan.schedule.totals;
    CHECK(same(json.at("totals").at("tube_length"), totals.tube_length));
    CHECK(same(json.at("totals").at("cut_length"), totals.cut_length));
    CHECK(same(json.at("totals").at("fill_volume"), totals.fill_volume));
    CHECK(same(json.at("totals").at("wire_length"), totals.wire_length));
    CHECK(same(json.at("totals").at("wall_volume"), totals.wall_volume));
    CHECK(json.at("totals").at("courses") == totals.courses);
    REQUIRE(json.at("courses").size() == plan.schedule.courses.size());
    for (std::size_t k = 0; k < plan.schedule.courses.size(); ++k)
        check_course(json.at("courses")[k], plan.schedule.courses[k]);
    REQUIRE(json.at("elements").at("openings").size() == plan.schedule.openings.size());
    for (std::size_t k = 0; k < plan.schedule.openings.size(); ++k) {
        const OpeningPlan& opening = plan.schedule.openings[k];
        const Json& written = json.at("elements").at("openings")[k];
        CHECK(written.at("id") == opening.form.id);
        CHECK(same(written.at("outline").at("half_width"), opening.form.half_width));
        CHECK(same(written.at("outline").at("top"), opening.form.top));
        CHECK(same(written.at("clear_width"), opening.clear_width));
        CHECK(same(written.at("form_depth"), opening.least_form_depth));
        CHECK(same(written.at("frame_band")[1], opening.frame_band_end));
        CHECK(same_point(written.at("origin"), opening.form.origin));
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
    check_additions(json, plan.schedule);
    CHECK(json.at("fitted").size() == plan.schedule.fitted.size());
    CHECK(json.at("headroom").size() == plan.headroom.size());
    CHECK(json.at("findings").size() == plan.findings.size());
}

// Every number of a document, with its place.
void for_each_number(const Json& json, const std::string& place,
                     const std::function<void(double, const std::string&)>& act) {
    if (json.is_number())
        act(json.get<double>(), place);
    for (const auto& [key, value] : json.items())
        if (json.is_structured())
            for_each_number(value, place + "/" + key, act);
}

} // namespace

TEST_CASE("the schedule's keys are those of the contract, in its order") {
    const Json json = Json::parse(schedule_json(awkward_plan()));
    check_contract(json, {"format", "version", "name", "course_height", "courses", "totals"});
    for (const Json& course : json.at("courses")) {
        check_contract(course,
                       {"number", "bottom", "top", "below_floor", "rings", "straights", "wall_area",
                        "fill_volume", "tube_length", "cut_length", "wire_length"});
        for (const Json& ring : course.at("rings")) {
            check_contract(ring,
                           {"dome", "kind", "inside_radius", "centre_radius", "outside_radius",
                            "chain", "step_in", "bearing_width", "runs", "cuts"});
            for (const Json& run : ring.at("runs")) {
                check_contract(run, {"id", "start_bearing", "end_bearing", "length", "tubes"});
                for (const Json& tube : run.at("tubes"))
                    check_contract(tube, {"id", "length", "cut_length"});
            }
            for (const Json& cut : ring.at("cuts"))
                check_contract(cut, {"by", "side", "half_width", "inside_bearing", "centre_bearing",
                                     "outside_bearing", "inside_arc_from_datum"});
        }
    }
    check_contract(json.at("totals"), {"tube_length", "cut_length", "fill_volume", "wire_length",
                                       "wall_volume", "courses"});
    CHECK(json.at("courses")[1].at("rings")[0].at("cuts").size() == 2);
}

TEST_CASE("a schedule of awkward values is read back as it was") {
    check_schedule(awkward_plan());
}

TEST_CASE("bearings that round to 360 are 0, and a full ring ends 360 degrees on") {
    const Json json = Json::parse(schedule_json(awkward_plan()));
    const Json& ring = json.at("courses")[0].at("rings")[0];
    CHECK(ring.at("runs")[0].at("start_bearing") == 0);
    CHECK(ring.at("runs")[0].at("end_bearing") == 360);
    CHECK(ring.at("runs")[0].at("tubes")[0].at("start_bearing") == 0);
    CHECK(ring.at("runs")[0].at("tubes")[1].at("end_bearing") == 360);
    const Json& cuts = json.at("courses")[1].at("rings")[0].at("cuts");
    CHECK(cuts[0].at("inside_bearing") == 167.234568);
    CHECK(cuts[1].at("inside_bearing") == 0);
    CHECK(cuts[1].at("centre_bearing") == 0);
    CHECK(json.at("courses")[1].at("rings")[0].at("runs")[0].at("end_bearing") == 492.75);
}

TEST_CASE("numbers are rounded to 1e-6, without negative zeros") {
    const std::string text = schedule_json(awkward_plan());
    CHECK(text.find("-0.0,") == std::string::npos);
    CHECK(text.find("-0.0\n") == std::string::npos);
    CHECK(text.back() == '\n');
    int count = 0;
    for_each_number(Json::parse(text), "", [&](double value, const std::string& place) {
        CAPTURE(place);
        ++count;
        const double millionths = value * 1e6;
        CHECK(std::abs(millionths - std::round(millionths)) < 1e-3);
    });
    CHECK(count > 150);
}

TEST_CASE("texts come through as UTF-8, whatever the design is called") {
    const Json json = Json::parse(schedule_json(awkward_plan()));
    CHECK(json.at("name") == "Séchoir \"Nº 1\"\n– 乾燥\x01 \ufffd");
}

TEST_CASE("the schedule is the same where decimals are commas") {
    const std::string here = schedule_json(awkward_plan());
    const CommaLocale commas;
    CHECK(schedule_json(awkward_plan()) == here);
}

TEST_CASE("the schedule of every whole building is read back as it was") {
    std::set<std::string> found;
    for (const std::string& name : whole_building_names()) {
        CAPTURE(name);
        const BuildingPlan plan = whole_building_plan(name);
        check_schedule(plan);
        const Json json = Json::parse(schedule_json(plan));
        for (const auto& [kind, list] : json.at("elements").items())
            if (!list.empty())
                found.insert(kind);
        for (const Json& course : json.at("courses"))
            for (const Json& straight : course.at("straights")) {
                check_contract(straight, {"of", "part", "length", "start", "end", "tubes"});
                found.insert(straight.at("part").get<std::string>());
            }
    }
    for (const char* kind : {"tubes", "domes", "openings", "tunnels", "buttresses", "joins", "fans",
                             "lintels", "sleeves", "left", "right", "crown", "end", "pier"}) {
        CAPTURE(kind);
        CHECK(found.count(kind) == 1);
    }
}

TEST_CASE("the schedule of every demo design is read back as it was") {
    for (const std::string& name : demo_names()) {
        CAPTURE(name);
        check_schedule(demo_plan(name));
    }
}

// python3-jsonschema, draft 2020-12.
TEST_CASE("the schedules of all designs keep to the published schema") {
    const ScratchDirectory scratch;
    std::vector<std::string> command{"/usr/bin/python3",
                                     COILWRIGHT_SOURCE_DIR "/tests/exporters/validate_json.py",
                                     COILWRIGHT_SOURCE_DIR "/docs/reference/schedule.schema.json"};
    const auto add = [&](const std::string& name, const BuildingPlan& plan) {
        command.push_back((scratch.path() / (name + ".json")).string());
        put_bytes(command.back(), schedule_json(plan));
    };
    add("awkward", awkward_plan());
    for (const std::string& name : demo_names())
        add(name, demo_plan(name));
    for (const std::string& name : whole_building_names())
        add(name, whole_building_plan(name));
    std::string said;
    CHECK_NOTHROW(said = output_of(command));
    CAPTURE(said);
    CHECK(std::count(said.begin(), said.end(), '\n') ==
          static_cast<std::ptrdiff_t>(demo_names().size() + whole_building_names().size()) + 1);

    // The schema does refuse: a bearing of 360, and a key left out.
    Json broken = Json::parse(schedule_json(awkward_plan()));
    broken.at("courses")[1].at("rings")[0].at("cuts")[0].at("inside_bearing") = 360;
    put_bytes(command.back(), broken.dump());
    CHECK_THROWS_WITH(output_of(command),
                      Catch::Contains("/courses/1/rings/0/cuts/0/inside_bearing"));
    broken = Json::parse(schedule_json(awkward_plan()));
    broken.at("courses")[2].erase("straights");
    put_bytes(command.back(), broken.dump());
    CHECK_THROWS_WITH(output_of(command), Catch::Contains("'straights' is a required property"));
}

TEST_CASE("the reference tells every key of the schedule") {
    const std::string page = bytes_of(COILWRIGHT_SOURCE_DIR "/docs/reference/schedule.md");
    std::set<std::string> keys;
    const std::function<void(const Json&)> collect = [&](const Json& json) {
        if (json.is_object())
            for (const std::string& key : keys_of(json))
                keys.insert(key);
        if (json.is_structured())
            for (const Json& value : json)
                collect(value);
    };
    collect(Json::parse(schedule_json(awkward_plan())));
    for (const std::string& name : whole_building_names())
        collect(Json::parse(schedule_json(whole_building_plan(name))));
    keys.erase("before"); // told as set.before and set.after
    keys.erase("after");
    keys.erase("set");
    CHECK(keys.size() > 90);
    for (const std::string& key : keys) {
        CAPTURE(key);
        CHECK(page.find("`" + key + "`") != std::string::npos);
    }
}

TEST_CASE("faults as JSON carry every part of a diagnostic") {
    const Diagnostic fault{"unknown-key", {3, 14}, "dome.vault.rise",  "there is no key \"rise\"",
                           "one of ...",  "x = 1", "did you mean `x`?"};
    const Json json = Json::parse(diagnostics_json({fault, fault}, "odd \xff name\n.toml"));
    CHECK(json.at("format") == "coilwright-diagnostics");
    CHECK(json.at("file") == "odd \ufffd name\n.toml");
    REQUIRE(json.at("diagnostics").size() == 2);
    CHECK(json.at("diagnostics")[1] == Json{{"code", "unknown-key"},
                                            {"line", 3},
                                            {"column", 14},
                                            {"subject", "dome.vault.rise"},
                                            {"message", "there is no key \"rise\""},
                                            {"allowed", "one of ..."},
                                            {"example", "x = 1"},
                                            {"hint", "did you mean `x`?"}});
    CHECK(Json::parse(diagnostics_json({}, "f")).at("diagnostics") == Json::array());
}

TEST_CASE("findings as JSON keep their order, values and what is not known") {
    const Json json = Json::parse(findings_json(awkward_plan()));
    CHECK(json.at("format") == "coilwright-findings");
    REQUIRE(json.at("findings").size() == 2);
    const Json& advice = json.at("findings")[0];
    CHECK(advice.at("verdict") == "advice");
    CHECK(advice.at("value") == 0.0254);
    CHECK(advice.at("unit") == "m");
    CHECK(advice.at("line") == 31);
    CHECK(advice.at("remedy") == "=1+1, \"quoted\"");
    CHECK(json.at("findings")[1].at("value").is_null());
    CHECK(json.at("findings")[1].at("verdict") == "not judged");
    CHECK(json.at("headroom")[0].at("rows")[1].at("square") == 1.8);
}

} // namespace coilwright
