#include "tests/drawing/plans.hpp"

#include "geometry/design/read_design.hpp"
#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"
#include "tests/support/files.hpp"

#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

namespace coilwright::testing {

namespace {

constexpr double inch = metres_per_inch;

BuildingPlan sound_plan(Design design) {
    BuildingPlan plan = plan_building(std::move(design), {});
    for (const Diagnostic& diagnostic : plan.diagnostics)
        UNSCOPED_INFO(diagnostic.subject << ": " << diagnostic.message);
    REQUIRE(plan.sound());
    return plan;
}

Opening hole(const char* id, double bearing, double width, double sill, double height,
             HeadKind head, OpeningUse use) {
    Opening made = opening(id, bearing, width * inch, sill * inch, height * inch, head);
    made.use = use;
    if (head == HeadKind::segmental)
        made.head.rise = 6 * inch;
    return made;
}

} // namespace

BuildingPlan demo_plan(const std::string& name) {
    std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR) + "/models/" + name + ".toml");
    REQUIRE(file.good());
    std::stringstream text;
    text << file.rdbuf();
    DesignReading reading = read_design(text.str());
    REQUIRE(reading.diagnostics.empty());
    return sound_plan(std::move(reading.design));
}

BuildingPlan whole_plan(const std::string& name) {
    DesignReading reading = read_design(whole_building_text(name));
    REQUIRE(reading.diagnostics.empty());
    Fit fitted = fit(reading.design);
    REQUIRE(check_layout(fitted.design).empty());
    BuildingPlan plan;
    plan.design = std::move(fitted.design);
    plan.schedule = lay(plan.design);
    plan.schedule.fitted = std::move(fitted.fitted);
    return plan;
}

BuildingPlan crowded_plan() {
    Design design = store_design();
    design.name = "Ein sehr langer Name: Зернохранилище, Ωδή, naïve façade № 5, 穀倉, ab";
    Dome& dome = design.domes.front();
    dome.inside_diameter = 14 * 12 * inch;
    dome.profile.rise = 14 * 12 * inch;
    dome.datum = "main-door-01";
    design.openings = {
        hole("back-door-02", 330, 32, 0, 80, HeadKind::round, OpeningUse::door),
        hole("main-door-01", 150, 36, 0, 82, HeadKind::pointed, OpeningUse::door),
        hole("vent-circles", 275, 12, 35, 12, HeadKind::circle, OpeningUse::vent),
        hole("w-west-sidee", 230, 24, 30, 32, HeadKind::round, OpeningUse::window),
        hole("window-eastt", 80, 24, 30, 30, HeadKind::segmental, OpeningUse::window),
        hole("window-north", 20, 20, 30, 30, HeadKind::pointed, OpeningUse::window)};
    for (Opening& one : design.openings)
        one.in = dome.id;
    return sound_plan(std::move(design));
}

BuildingPlan dense_plan() {
    Design design = store_design();
    Dome& dome = design.domes.front();
    dome.inside_diameter = dome.profile.rise.emplace(34 * 12 * inch);
    dome.springline = 150 * inch;
    design.openings.clear();
    for (int i = 0; i < 16; ++i) {
        const std::string id = std::string("opening-no-") + static_cast<char>('a' + i);
        design.openings.push_back(hole(id.c_str(), 22.5 * i, 24, 40, 36,
                                       i % 2 == 0 ? HeadKind::round : HeadKind::pointed,
                                       OpeningUse::window));
        design.openings.back().in = dome.id;
    }
    return sound_plan(std::move(design));
}

BuildingPlan pair_plan(DisplayUnit unit) {
    Design design = store_design();
    design.name = "Two at Alder Flats";
    design.unit = unit;
    design.compass.arm = CompassArm::chain;
    design.compass.pole_diameter = 0.06;
    design.course.tamp_gap = 0.012;
    Dome second = design.domes.front();
    second.id = "bath";
    second.at = {4.9, 0.6};
    second.inside_diameter = 1.9;
    second.springline = 0.762;
    second.profile = {};
    second.profile.kind = ProfileKind::round;
    second.top.kind = TopKind::skylight;
    second.top.diameter = 0.6;
    second.datum.clear();
    design.domes.insert(design.domes.begin(), second);
    return sound_plan(std::move(design));
}

std::vector<BuildingPlan> several_plans() {
    return {demo_plan("grain-store"), demo_plan("workshop"), demo_plan("cabin-metric"),
            crowded_plan(),           pair_plan(),           pair_plan(DisplayUnit::feet)};
}

std::vector<SeededPlan> random_plans(std::uint64_t first_seed, int count) {
    std::vector<SeededPlan> plans;
    for (std::uint64_t seed = first_seed; static_cast<int>(plans.size()) < count; ++seed) {
        REQUIRE(seed < first_seed + 20 * static_cast<std::uint64_t>(count));
        BuildingPlan plan = plan_building(random_design(seed), {});
        if (plan.sound() && plan.schedule.courses.size() <= 60)
            plans.push_back({seed, std::move(plan)});
    }
    return plans;
}

} // namespace coilwright::testing
