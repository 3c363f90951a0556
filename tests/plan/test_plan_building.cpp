#include "geometry/plan/plan_building.hpp"

#include "geometry/design/read_design.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const char* five_faults = R"(coilwright = 1
name = "Five faults"
unit = "ft"
[course]
height = "5 in"
colour = "red"
[tube.main]
lay_flat = "17 inch tube"
[tube.good]
lay_flat = "17 in"
[dome.a]
inside_diameter = "9 ft"
springline = "20 in"
profile = { kind = "pointed", rise = "9 ft" }
tube = "good"
[opening.door]
in = "a"
use = "door"
bearing = 150
width = "32 in"
sill = "0 in"
height = "80 in"
head = { kind = "pointed", rise = "24 in" }
[opening.near]
in = "a"
use = "window"
bearing = 190
width = "20 in"
sill = "30 in"
height = "20 in"
[opening.wide]
in = "a"
use = "window"
bearing = 330
width = "120 in"
sill = "30 in"
height = "20 in"
[opening.lost]
in = "b"
use = "window"
bearing = 250
width = "20 in"
sill = "30 in"
height = "20 in"
)";

} // namespace

TEST_CASE("five faults of different stages are found at once, each on its line") {
    const DesignReading reading = read_design(five_faults);
    const BuildingPlan plan = plan_building(reading.design, reading.diagnostics);
    CHECK_FALSE(plan.sound());
    CHECK(plan.schedule.courses.empty());
    const auto line_of = [&](const std::string& subject) {
        const auto found = std::find_if(
            plan.diagnostics.begin(), plan.diagnostics.end(), [&](const Diagnostic& diagnostic) {
                return diagnostic.subject.find(subject) != std::string::npos;
            });
        return found == plan.diagnostics.end() ? -1 : found->place.line;
    };
    CHECK(plan.diagnostics.size() == 5);
    CHECK(line_of("colour") == 6);
    CHECK(line_of("lay_flat") == 8);
    CHECK(line_of("opening.near") == 27);
    CHECK(line_of("opening.wide") == 35);
    CHECK(line_of("opening.lost") == 39);
    CHECK(std::is_sorted(
        plan.diagnostics.begin(), plan.diagnostics.end(),
        [](const Diagnostic& a, const Diagnostic& b) { return a.place.line < b.place.line; }));
}

TEST_CASE("a sound design comes out laid, with the worst finding first") {
    const BuildingPlan plan = plan_building(store_design(), {});
    REQUIRE(plan.sound());
    CHECK(plan.schedule.totals.courses == static_cast<int>(plan.schedule.courses.size()));
    REQUIRE(plan.headroom.size() == 1);
    CHECK_FALSE(plan.findings.empty());
    bool seen_lower = false;
    for (const Finding& finding : plan.findings) {
        const bool urgent = finding.verdict == Verdict::fails || finding.verdict == Verdict::advice;
        CHECK_FALSE((urgent && seen_lower));
        seen_lower = seen_lower || !urgent;
    }
}

TEST_CASE("every random design goes through the whole pipeline") {
    int sound = 0;
    for (std::uint64_t seed = 1; seed <= 1000; ++seed) {
        CAPTURE(seed);
        const BuildingPlan plan = plan_building(random_design(seed), {});
        if (!plan.sound()) {
            for (const Diagnostic& diagnostic : plan.diagnostics)
                CHECK_FALSE(diagnostic.example.empty());
            continue;
        }
        ++sound;
        CHECK(plan.headroom.size() == plan.design.domes.size());
        for (const Headroom& room : plan.headroom) {
            CHECK(room.at_pole > 0);
            CHECK(room.floor_area >= 0);
        }
    }
    CHECK(sound > 300);
}

TEST_CASE("openings that no tube would fit are told with the tube's own faults") {
    const std::string text = R"(coilwright = 1
name = "Faults of tube and openings"
unit = "ft"
[course]
height = "5 in"
joint_lap = "500 ft"
[tube.main]
lay_flat = "70 in"
tamped_width = "60 in"
[dome.a]
inside_diameter = "9 ft"
springline = "20 in"
profile = { kind = "pointed", rise = "9 ft" }
tube = "main"
[opening.door]
in = "a"
use = "door"
bearing = 150
width = "32 in"
sill = "0 in"
height = "170 in"
head = { kind = "pointed", rise = "24 in" }
[opening.east]
in = "a"
use = "window"
bearing = 50
width = "20 in"
sill = "120 in"
height = "30 in"
[opening.west]
in = "a"
use = "window"
bearing = 270
width = "120 in"
sill = "30 in"
height = "20 in"
[opening.fits]
in = "a"
use = "window"
bearing = 330
width = "20 in"
sill = "30 in"
height = "20 in"
[opening.shelf]
in = "a"
use = "niche"
bearing = 0
width = "12 in"
sill = "30 in"
height = "10 in"
depth = "6 in"
)";
    DesignReading reading = read_design(text);
    const BuildingPlan plan =
        plan_building(std::move(reading.design), std::move(reading.diagnostics));
    std::vector<std::string> told;
    for (const Diagnostic& fault : plan.diagnostics)
        told.push_back(fault.subject + ": " + fault.code);
    std::sort(told.begin(), told.end());
    // The niche is judged by the tube's width, and so not yet.
    CHECK(told == std::vector<std::string>{
                      "course.joint_lap: out-of-range", "opening.door: opening-too-high",
                      "opening.east: opening-too-high", "opening.west: opening-too-wide",
                      "tube.main.lay_flat: out-of-range", "tube.main.tamped_width: out-of-range"});
}
