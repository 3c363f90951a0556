// All checks of every demo design: each finding once a subject, whole, and few that fail.
#include "geometry/checks/check_building.hpp"
#include "geometry/design/read_design.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <set>
#include <tuple>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

/// One by one, to the last bit: what is worked out for the report alone must change no finding.
void check_same(const std::vector<Finding>& quick, const std::vector<Finding>& with_report) {
    const auto all_of = [](const Finding& f) {
        return std::tie(f.code, f.subject, f.place.line, f.verdict, f.message, f.value, f.limit,
                        f.unit, f.formula, f.source, f.remedy);
    };
    REQUIRE(quick.size() == with_report.size());
    for (std::size_t i = 0; i < quick.size(); ++i) {
        CAPTURE(quick[i].code, quick[i].subject);
        CHECK((all_of(quick[i]) == all_of(with_report[i])));
    }
}

} // namespace

TEST_CASE("the demos' findings are whole, and each is told once") {
    int demos = 0;
    for (const auto& entry : std::filesystem::directory_iterator(COILWRIGHT_SOURCE_DIR "/models")) {
        std::ifstream file(entry.path(), std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        if (text.find("\n[dome.") == std::string::npos) // a works file
            continue;
        ++demos;
        std::set<std::pair<std::string, std::string>> told;
        const BuildingPlan plan = laid(text);
        const std::vector<Finding> findings = all_findings(plan);
        CAPTURE(entry.path().filename().string());
        check_same(findings, checked_building(plan).findings);
        for (const Finding& finding : findings) {
            CAPTURE(finding.code, finding.subject);
            CHECK(told.insert({finding.code, finding.subject}).second);
            CHECK_FALSE(finding.message.empty());
            CHECK_FALSE(finding.subject.empty());
            CHECK(finding.message.find("safe") == std::string::npos);
            CHECK(finding.verdict != Verdict::fails);
            if (finding.verdict == Verdict::advice || finding.verdict == Verdict::holds)
                CHECK_FALSE(finding.source.empty());
            if (finding.verdict == Verdict::advice && finding.value && finding.limit)
                CHECK_FALSE(finding.remedy.empty());
        }
    }
    CHECK(demos >= 7);
}

TEST_CASE("order of the tables and unit of the design change no finding of use or of practice") {
    const BuildingPlan feet = laid(room_design);
    const std::size_t door = room_design.find("[opening.door]"),
                      win = room_design.find("[opening.win]"),
                      finish = room_design.find("[finish]");
    const std::string turned = room_design.substr(0, door) + room_design.substr(win, finish - win) +
                               room_design.substr(door, win - door) + room_design.substr(finish);
    const BuildingPlan other = laid(with(turned, "unit = \"ft\"", "unit = \"m\""));
    const std::vector<Finding> here = check_building(feet), there = check_building(other);
    REQUIRE(here.size() == there.size());
    for (std::size_t i = 0; i < here.size(); ++i) {
        CAPTURE(here[i].code);
        CHECK(here[i].code == there[i].code);
        CHECK(here[i].subject == there[i].subject);
        CHECK(here[i].verdict == there[i].verdict);
        CHECK(here[i].value.has_value() == there[i].value.has_value());
        if (here[i].value && there[i].value)
            CHECK(*here[i].value == Approx(*there[i].value));
    }
}
