// What is found of the demo domes, and how it follows the rules.
#include "geometry/checks/check_building.hpp"
#include "geometry/design/read_design.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>

using namespace coilwright;

namespace {

BuildingPlan plan_of(const std::string& demo) {
    std::ifstream file(COILWRIGHT_SOURCE_DIR "/models/" + demo, std::ios::binary);
    DesignReading reading = read_design(std::string{std::istreambuf_iterator<char>(file), {}});
    return plan_building(std::move(reading.design), std::move(reading.diagnostics));
}

} // namespace

TEST_CASE("the grain store's geometric factor of safety is that of docs/concepts/statics.md") {
    const std::vector<Finding> findings = check_building(plan_of("grain-store.toml"));
    const auto found = std::find_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.code == "geometric-safety";
    });
    REQUIRE(found != findings.end());
    CHECK(found->subject == "dome.store");
    CHECK(*found->value == Approx(1.4).margin(0.05));
    CHECK(found->verdict == Verdict::advice);
    CHECK(found->message.find("'door'") != std::string::npos);
}
