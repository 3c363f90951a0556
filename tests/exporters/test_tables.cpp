#include "exporters/schedule_table.hpp"
#include "exporters/text_table.hpp"
#include "tests/exporters/sample_plans.hpp"

#include <catch2/catch.hpp>
#include <sstream>

namespace coilwright {
namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);)
        lines.push_back(line);
    return lines;
}

} // namespace

// Unicode Standard Annex 11: combining marks take no column, wide characters two.
TEST_CASE("columns are aligned by what a terminal shows, not by bytes") {
    CHECK(display_width("m²") == 2);
    CHECK(display_width("e\u0301") == 1);
    CHECK(display_width("乾燥") == 4);
    const std::string table = text_table({{"name", CellAlign::left}, {"area"}},
                                         {{"乾燥", "1.5 m²"}, {"e\u0301", "12 m²"}, {"plain", ""}});
    CHECK(table == "name     area\n"
                   "-----  ------\n"
                   "乾燥   1.5 m²\n"
                   "e\u0301       12 m²\n"
                   "plain\n");
}

TEST_CASE("the schedule's table has a line for each course and each cut") {
    const BuildingPlan plan = awkward_plan();
    const std::string text = schedule_table(plan);
    CAPTURE(text);
    const std::vector<std::string> lines = lines_of(text);
    REQUIRE(lines.size() == 21);
    CHECK(lines[1] == "Fitted: Springline: 4.");
    CHECK(lines[3].find("course  dome") == 0);
    CHECK(lines[5].find("     1  vault    0 in  4 ft 6 in  5 ft 9 in") == 0);
    CHECK(lines[5].find("below floor") != std::string::npos);
    CHECK(lines[6].find("A B") != std::string::npos);
    CHECK(lines[7].find("cap") != std::string::npos);
    CHECK(lines[12].find("door  right   167.2°") != std::string::npos);
    CHECK(lines[13].find("  0.0°") != std::string::npos); // 359.99999999
    CHECK(lines[15].find("Totals: 3 courses of 5 in; tube laid 96 ft 6-5/8 in, to cut without short bags 121 ft "
                         "5-1/2 in; fill 49.9 cu ft; wire 201 ft 9-1/4 in") == 0);
    CHECK(text.find('\x01') == std::string::npos);
}

TEST_CASE("domes that share a course each have their own fill in the table") {
    BuildingPlan plan = awkward_plan();
    Course& course = plan.schedule.courses.front();
    course.rings.push_back(course.rings.front());
    course.rings[0].fill_volume = 0.3;
    course.rings[1].fill_volume = 0.171;
    plan.schedule.unit = DisplayUnit::metres;
    const std::vector<std::string> lines = lines_of(schedule_table(plan));
    CHECK(lines[5].find("0.300 m³") != std::string::npos);
    CHECK(lines[6].find("0.171 m³") != std::string::npos);
}

TEST_CASE("of two rings in a course the outer one is told, and its cuts bear a 2") {
    BuildingPlan plan = awkward_plan();
    Course& course = plan.schedule.courses.at(1);
    REQUIRE(course.rings.size() == 1);
    course.rings.push_back(course.rings.front());
    course.rings[1].wythe = 2;
    const std::vector<std::string> lines = lines_of(schedule_table(plan));
    CHECK(lines[6].find("A B ") != std::string::npos);
    CHECK(lines[6].find("outer ring") == std::string::npos);
    CHECK(lines[7].find("A2 B2") != std::string::npos);
    CHECK(lines[7].find("outer ring") != std::string::npos);
    std::size_t inner = 0, outer = 0;
    for (const std::string& line : lines) {
        inner += line.find("  A    door") != std::string::npos;
        outer += line.find("  A2   door") != std::string::npos;
    }
    CHECK(inner == 1);
    CHECK(outer == 1);
}

TEST_CASE("the tables are in millimetres where the design is metric") {
    BuildingPlan plan = awkward_plan();
    plan.schedule.unit = DisplayUnit::metres;
    const std::string text = schedule_table(plan);
    CHECK(text.find("1372 mm") != std::string::npos);
    CHECK(text.find("0.471 m³") != std::string::npos);
    CHECK(text.find(" in ") == std::string::npos);
}

TEST_CASE("straight runs have a line each") {
    const BuildingPlan plan = whole_building_plan("retreat");
    const std::vector<std::string> lines = lines_of(schedule_table(plan));
    std::size_t straights = 0, listed = 0;
    for (const Course& course : plan.schedule.courses)
        straights += course.straights.size();
    bool in_straights = false;
    for (const std::string& line : lines) {
        if (line.find("Straight tubes") == 0)
            in_straights = true;
        else if (line.empty())
            in_straights = false;
        else if (in_straights)
            ++listed;
    }
    CHECK(listed == straights + 2); // two lines of heading
}

} // namespace coilwright
