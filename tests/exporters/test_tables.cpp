#include "exporters/findings_table.hpp"
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
    REQUIRE(lines.size() == 16);
    CHECK(lines[1] == "Fitted: Springline: 4.");
    CHECK(lines[3].find("course  dome") == 0);
    CHECK(lines[5].find("     1  vault    0 in  4 ft 6 in  5 ft 9 in") == 0);
    CHECK(lines[5].find("below floor") != std::string::npos);
    CHECK(lines[6].find("A B") != std::string::npos);
    CHECK(lines[7].find("cap") != std::string::npos);
    CHECK(lines[12].find("door     right   167.2°") != std::string::npos);
    CHECK(lines[13].find("  0.0°") != std::string::npos); // 359.99999999
    CHECK(lines[15].find("Totals: 3 courses of 5 in; tube laid 96 ft 6-5/8 in, to cut 121 ft "
                         "5-1/2 in; fill 49.9 cu ft; wire 201 ft 9-1/4 in") == 0);
    CHECK(text.find('\x01') == std::string::npos);
}

TEST_CASE("the tables are in millimetres where the design is metric") {
    BuildingPlan plan = awkward_plan();
    plan.schedule.unit = DisplayUnit::metres;
    const std::string text = schedule_table(plan);
    CHECK(text.find("1372 mm") != std::string::npos);
    CHECK(text.find("0.471 m³") != std::string::npos);
    CHECK(text.find(" in ") == std::string::npos);
    CHECK(findings_table(plan).find("25 mm") != std::string::npos);
}

TEST_CASE("findings are listed with value, limit, source and remedy, and counted") {
    const BuildingPlan plan = awkward_plan();
    const std::vector<std::string> lines = lines_of(findings_table(plan));
    REQUIRE(lines.size() == 6);
    CHECK(lines[2] ==
          "advice      opening.door  sill-misses-joint   1 in  3/8 in  common practice, "
          "no source  =1+1, \"quoted\"");
    CHECK(lines[3].find("not judged  dome.vault    headroom") == 0);
    CHECK(lines[5] == "fails: 0; advice: 1; not judged: 1; holds: 0");
    BuildingPlan clean = plan;
    clean.findings.clear();
    CHECK(findings_table(clean) == "No findings.\n");
}

TEST_CASE("values of findings are shown by what they count") {
    CHECK(finding_value(0.2032, FindingUnit::metre, DisplayUnit::feet) == "8 in");
    CHECK(finding_value(0.2032, FindingUnit::metre, DisplayUnit::metres) == "203 mm");
    CHECK(finding_value(9.290304, FindingUnit::square_metre, DisplayUnit::feet) == "100.0 sq ft");
    CHECK(finding_value(51.83, FindingUnit::degree, DisplayUnit::feet) == "51.8°");
    CHECK(finding_value(3, FindingUnit::count, DisplayUnit::feet) == "3");
    CHECK(finding_value(0.5, FindingUnit::none, DisplayUnit::feet) == "0.500");
}

} // namespace coilwright
