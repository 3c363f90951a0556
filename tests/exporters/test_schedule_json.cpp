#include "exporters/schedule_json.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/schedule_checks.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <functional>
#include <nlohmann/json.hpp>
#include <set>

namespace coilwright {
namespace {

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

void check_ground(const Json& json, const Region& region) {
    CHECK(same(json.at("area"), region.area));
    CHECK(same(json.at("outer_length"), outer_perimeter(region)));
    CHECK(same(json.at("hole_length"), hole_perimeter(region)));
    CHECK(json.at("region").size() == region.loops.size());
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
    const Json& order = json.at("totals").at("order");
    REQUIRE(order.size() == totals.order.size());
    for (std::size_t k = 0; k < order.size(); ++k) {
        const TubeOrder& line = totals.order[k];
        CHECK(order[k].at("element") == line.element);
        CHECK(order[k].at("kind") == word(line.kind));
        CHECK(order[k].at("tube") == line.tube);
        CHECK(order[k].at("tubes") == line.tubes);
        CHECK(order[k].at("bags") == line.bags);
        const std::pair<const char*, double> lengths[] = {{"rings", line.rings},
                                                          {"straights", line.straights},
                                                          {"cap_bags", line.cap_bags},
                                                          {"fan_bags", line.fan_bags},
                                                          {"niche_backs", line.niche_backs},
                                                          {"wedges", line.wedges},
                                                          {"linings", line.linings},
                                                          {"cut_length", line.cut_length}};
        for (const auto& [key, value] : lengths)
            CHECK(same(order[k].at(key), value));
    }
    REQUIRE(json.at("courses").size() == plan.schedule.courses.size());
    for (std::size_t k = 0; k < plan.schedule.courses.size(); ++k)
        check_course(json.at("courses")[k], plan.schedule.courses[k]);
    check_elements(json, plan.schedule);
    CHECK(json.at("fitted").size() == plan.schedule.fitted.size());
    CHECK(json.at("headroom").size() == plan.headroom.size());
    CHECK(json.at("findings").size() == plan.findings.size());
    const Json& tunnels = json.at("tunnel_headroom");
    REQUIRE(tunnels.size() == plan.tunnel_headroom.size());
    for (std::size_t k = 0; k < tunnels.size(); ++k) {
        const TunnelHeadroom& room = plan.tunnel_headroom[k];
        CHECK(tunnels[k].at("tunnel") == room.tunnel);
        CHECK(same(tunnels[k].at("at_middle"), room.at_middle));
        CHECK(same(tunnels[k].at("width"), room.width));
        CHECK(same(tunnels[k].at("length"), room.length));
        CHECK(same(tunnels[k].at("floor_area"), room.floor_area));
        for (std::size_t i = 0; i < room.rows.size(); ++i) {
            const Json& row = tunnels[k].at("rows").at(i);
            CHECK(same(row.at("height"), room.rows[i].height));
            CHECK(same(row.at("width"), room.rows[i].width));
            CHECK(same(row.at("area"), room.rows[i].area));
        }
    }
    check_ground(json.at("ground").at("floor"), plan.schedule.ground.floor);
    check_ground(json.at("ground").at("footprint"), plan.schedule.ground.footprint);
    check_ground(json.at("ground").at("ground_course"), plan.schedule.ground.ground_course);
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
    for (const std::string& name : demo_files()) {
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
    for (const std::string& name : demo_files())
        add(name, demo_plan(name));
    for (const std::string& name : whole_building_names())
        add(name, whole_building_plan(name));
    std::string said;
    CHECK_NOTHROW(said = output_of(command));
    CAPTURE(said);
    CHECK(std::count(said.begin(), said.end(), '\n') ==
          static_cast<std::ptrdiff_t>(demo_files().size() + whole_building_names().size()) + 1);

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

} // namespace coilwright
