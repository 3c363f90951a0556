#include "tests/checks/laid.hpp"

#include "geometry/design/read_design.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <regex>

namespace coilwright::testing {

const std::string room_design = R"(coilwright = 1
name = "Room of the tests"
unit = "ft"
[course]
height = "5 in"
foundation = 4
[tube.main]
lay_flat = "20 in"
[dome.room]
use = "habitable"
inside_diameter = "14 ft"
springline = "50 in"
profile = { kind = "pointed", rise = "14 ft" }
tube = "main"
datum = "door"
[opening.door]
in = "room"
use = "door"
bearing = 180
width = "38 in"
sill = 0
height = "85 in"
head = { kind = "square" }
[opening.win]
in = "room"
bearing = 90
width = "36 in"
sill = "35 in"
height = "40 in"
head = { kind = "square" }
[finish]
inside_plaster = "1-1/2 in"
outside_plaster = "2 in"
[ground]
level = "-6 in"
)";

std::string with(std::string text, const std::string& old_piece, const std::string& new_piece) {
    const std::size_t at = text.find(old_piece);
    REQUIRE(at != std::string::npos);
    return text.replace(at, old_piece.size(), new_piece);
}

BuildingPlan laid(const std::string& design) {
    DesignReading reading = read_design(design);
    BuildingPlan plan = plan_building(std::move(reading.design), std::move(reading.diagnostics));
    for (const Diagnostic& fault : plan.diagnostics)
        UNSCOPED_INFO(fault.code + ": " + fault.subject + ": " + fault.message);
    REQUIRE(plan.sound());
    return plan;
}

Finding the(const std::vector<Finding>& findings, const std::string& code,
            const std::string& subject) {
    const auto is_it = [&](const Finding& finding) {
        return finding.code == code && (subject.empty() || finding.subject == subject);
    };
    CAPTURE(code, subject);
    REQUIRE(std::count_if(findings.begin(), findings.end(), is_it) == 1);
    const Finding found = *std::find_if(findings.begin(), findings.end(), is_it);
    CHECK_FALSE(found.message.empty());
    CHECK_FALSE(found.source.empty());
    CHECK_FALSE(found.subject.empty());
    CHECK(found.message.find("safe") == std::string::npos);
    if (found.verdict == Verdict::fails || found.verdict == Verdict::advice)
        CHECK_FALSE(found.remedy.empty());
    if (found.verdict == Verdict::holds)
        CHECK(found.remedy.empty());
    return found;
}

bool has(const std::vector<Finding>& findings, const std::string& code) {
    return std::any_of(findings.begin(), findings.end(),
                       [&](const Finding& finding) { return finding.code == code; });
}

std::string taken(const Finding& finding, const std::string& pattern, int group) {
    std::smatch match;
    CAPTURE(finding.remedy, pattern);
    REQUIRE(std::regex_search(finding.remedy, match, std::regex(pattern)));
    return match[static_cast<std::size_t>(group)];
}

} // namespace coilwright::testing
