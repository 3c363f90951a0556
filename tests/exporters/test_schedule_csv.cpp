#include "exporters/schedule_csv.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

namespace coilwright {
namespace {

// Rows as Python's csv module reads them (RFC 4180, strict).
nlohmann::json rows_of(const BuildingPlan& plan) {
    const ScratchDirectory scratch;
    const auto file = scratch.path() / "schedule.csv";
    put_bytes(file, schedule_csv(plan));
    return nlohmann::json::parse(output_of(
        {"/usr/bin/python3", COILWRIGHT_SOURCE_DIR "/tests/exporters/read_csv.py", file.string()}));
}

double number(const nlohmann::json& row, const char* column) {
    return std::stod(row.at(column).get<std::string>());
}

} // namespace

TEST_CASE("the CSV has a row for each tube, with its course and ring") {
    std::vector<BuildingPlan> plans{awkward_plan()};
    for (const std::string& name : demo_files())
        plans.push_back(demo_plan(name));
    for (const std::string& name : whole_building_names())
        plans.push_back(whole_building_plan(name));
    for (const BuildingPlan& plan : plans) {
        CAPTURE(plan.schedule.name);
        const nlohmann::json rows = rows_of(plan);
        std::size_t at = 0;
        for (const Course& course : plan.schedule.courses) {
            for (const Ring& ring : course.rings) {
                for (const Run& run : ring.runs)
                    for (const LaidTube& tube : run.tubes) {
                        const nlohmann::json& row = rows.at(at++);
                        CHECK(row.at("course") == std::to_string(course.number));
                        CHECK(row.at("tube") == tube.id);
                        CHECK(row.at("run") == run.id);
                        CHECK(number(row, "bottom_m") == Approx(course.bottom).margin(1e-6));
                        CHECK(number(row, "inside_radius_m") ==
                              Approx(ring.inside_radius).margin(1e-6));
                        CHECK(number(row, "length_m") == Approx(tube.length).margin(1e-6));
                        CHECK(number(row, "outer_length_m") ==
                              Approx(tube.outer_length).margin(1e-6));
                        CHECK(number(row, "cut_length_m") == Approx(tube.cut_length).margin(1e-6));
                        CHECK(row.at("lap_short") == (tube.lap_short ? "yes" : "no"));
                        CHECK(row.at("element") == ring.dome);
                        CHECK(row.at("tube_type") == ring.tube);
                        CHECK(row.at("wythe") == std::to_string(ring.wythe));
                        CHECK(row.at("straight_end_east_m") == "");
                    }
                for (const Piece& piece : ring.pieces) {
                    const nlohmann::json& row = rows.at(at++);
                    CHECK(row.at("course") == std::to_string(course.number));
                    CHECK(row.at("element") == ring.dome);
                    CHECK(row.at("kind") == word(piece.kind));
                    CHECK(row.at("tube") == piece.id);
                    CHECK(row.at("run_start_by") == piece.of);
                    CHECK(row.at("run_end_by") == piece.other);
                    CHECK(row.at("tube_type") == ring.tube);
                    CHECK(number(row, "cut_length_m") == Approx(piece.cut_length).margin(1e-6));
                }
            }
            for (const Straight& straight : course.straights)
                for (const LaidTube& tube : straight.tubes) {
                    const nlohmann::json& row = rows.at(at++);
                    CHECK(row.at("course") == std::to_string(course.number));
                    CHECK(row.at("element") == straight.of);
                    CHECK(row.at("kind") == word(straight.part));
                    CHECK(row.at("run_start_by") == straight.start_by);
                    CHECK(row.at("run_end_by") == straight.end_by);
                    CHECK(row.at("inside_radius_m") == "");
                    CHECK(row.at("start_bearing_deg") == "");
                    CHECK(row.at("tube") == tube.id);
                    CHECK(row.at("tube_type") == straight.tube);
                    CHECK(number(row, "width_m") == Approx(straight.width).margin(1e-6));
                    CHECK(number(row, "length_m") == Approx(tube.length).margin(1e-6));
                    CHECK(number(row, "cut_length_m") == Approx(tube.cut_length).margin(1e-6));
                    CHECK(number(row, "straight_start_east_m") ==
                          Approx(straight.start.x()).margin(1e-6));
                    CHECK(number(row, "straight_end_north_m") ==
                          Approx(straight.end.y()).margin(1e-6));
                }
        }
        CHECK(at == rows.size());
    }
}

TEST_CASE("no text in the CSV can run as a formula, nor break its row") {
    BuildingPlan plan = awkward_plan();
    for (const std::string text : {"=1+1", "+1", "-1", "@x", "\tx", "\rx"}) {
        plan.schedule.courses[0].rings[0].runs[0].tubes[0].id = text;
        const nlohmann::json rows = rows_of(plan);
        CHECK(rows.at(0).at("tube") == "'" + text);
    }
    for (const std::string text : {"a,b", "say \"x\"", "two\nlines", "two\r\nlines"}) {
        plan.schedule.courses[0].rings[0].runs[0].tubes[0].id = text;
        CHECK(schedule_csv(plan).find('"') != std::string::npos);
    }
    plan.schedule.courses[0].rings[0].runs[0].tubes[0].id = "a,\"b\"";
    CHECK(rows_of(plan).at(0).at("tube") == "a,\"b\"");
}

TEST_CASE("bags of a cap have no bearings in the CSV") {
    const nlohmann::json rows = rows_of(awkward_plan());
    CHECK(rows.at(3).at("kind") == "cap");
    CHECK(rows.at(3).at("start_bearing_deg") == "");
    CHECK(rows.at(2).at("kind") == "ring");
    CHECK(rows.at(2).at("end_bearing_deg") == "492.750000");
}

TEST_CASE("the CSV is the same where decimals are commas") {
    const std::string here = schedule_csv(awkward_plan());
    const CommaLocale commas;
    CHECK(schedule_csv(awkward_plan()) == here);
}

} // namespace coilwright
