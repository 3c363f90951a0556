// Variants against the same design written out and worked out by the functions of the other
// subjects.
#include "geometry/variants/variants.hpp"

#include "geometry/checks/check_building.hpp"
#include "geometry/takeoff/worked_out.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/files.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <stdexcept>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

VariantStudy study_of(const std::string& demo, const std::vector<std::string>& choices) {
    VariantStudy study{whole_building_text(demo), demo_works(demo), {}};
    const Design design = read_design(study.text).design;
    for (const std::string& text : choices) {
        ChoiceReading reading = read_choice(text, design);
        REQUIRE(reading.fault == "");
        study.choices.push_back(std::move(reading.choice));
    }
    return study;
}

std::map<std::size_t, VariantResult> all_of(const VariantStudy& study, unsigned threads,
                                            const std::vector<bool>& wanted = {}) {
    std::map<std::size_t, VariantResult> results;
    const std::atomic<bool> stop{false};
    run_variants(study, wanted, threads, stop, [&](std::size_t index, VariantResult result) {
        CHECK(results.emplace(index, std::move(result)).second);
    });
    return results;
}

double safety_by_checks(const BuildingPlan& plan) {
    double least = 1e9;
    for (const Finding& finding : check_building(plan))
        if (finding.code == "geometric-safety" || finding.code == "tunnel-safety")
            least = std::min(least, finding.value.value_or(0));
    return least;
}

} // namespace

TEST_CASE("a variant is the design with its values written into it") {
    const VariantStudy study =
        study_of("grain-store", {"diameter=8 ft,9 ft", "rise=8 ft,9 ft,10 ft"});
    REQUIRE(variant_count(study) == 6);
    CHECK(variant_places(study, 4) == std::vector<std::size_t>{1, 1});
    std::string text = study.text;
    const auto put = [&](const std::string& from, const std::string& to) {
        REQUIRE(text.find(from) != std::string::npos);
        text.replace(text.find(from), from.size(), to);
    };
    put("inside_diameter = \"9 ft\"", "inside_diameter = \"8 ft\"");
    put("rise = \"9 ft\"", "rise = \"10 ft\"");
    const DesignReading reading = read_design(text);
    const BuildingPlan plan = plan_building(reading.design, reading.diagnostics);
    REQUIRE(plan.sound());
    const WorkedOut out = work_everything_out(plan, study.works);
    const VariantResult result = work_out_variant(study, 2); // 8 ft, 10 ft
    CHECK(result.laid);
    CHECK(result.fault == "");
    const VariantFigures& figures = result.figures;
    CHECK(figures.floor_area == out.take.floor_area);
    CHECK(figures.clear_height == plan.headroom[0].at_pole);
    // No short bags in this one: its tubes are all.
    CHECK(figures.tube == Approx(plan.schedule.totals.cut_length));
    CHECK(figures.fill == Approx(plan.schedule.totals.fill_volume));
    CHECK(figures.cost == Approx(out.costs.total.likely));
    CHECK(figures.person_days == out.days.person_days);
    CHECK(figures.working_days == out.days.working_days);
    // The floor is a circle of 8 ft; a wider one of the same kind takes more of everything.
    CHECK(figures.floor_area == Approx(3.14159265 * 4 * 4 * 0.3048 * 0.3048).epsilon(0.001));
    const VariantFigures wider = work_out_variant(study, 5).figures;
    CHECK(wider.floor_area > figures.floor_area);
    CHECK(wider.tube > figures.tube);
    CHECK(wider.fill > figures.fill);
    CHECK(wider.cost > figures.cost);
}

TEST_CASE("the factor of safety is that of the checks") {
    for (const std::string demo : {"grain-store", "workshop", "retreat", "home"}) {
        CAPTURE(demo);
        const BuildingPlan plan = demo_plan(demo + ".toml");
        CHECK(least_geometric_safety(plan) == Approx(safety_by_checks(plan)).epsilon(1e-6));
    }
}

TEST_CASE("a wall that its line of thrust leaves is a failing check of a variant") {
    const VariantStudy study = study_of("grain-store", {"diameter=9 ft", "lay-flat=15 in"});
    const VariantResult result = work_out_variant(study, 0);
    REQUIRE(result.laid);
    CHECK(result.figures.safety < 1);
    CHECK(result.figures.failing >= 1);
}

TEST_CASE("the same results in the same places on one thread and on five") {
    const VariantStudy study =
        study_of("washroom", {"diameter=5 ft to 7 ft by 6 in", "rise=5 ft,6 ft"});
    const auto one = all_of(study, 1), five = all_of(study, 5);
    REQUIRE(one.size() == 10);
    REQUIRE(five.size() == 10);
    for (const auto& [index, result] : one) {
        CAPTURE(index);
        const VariantResult& other = five.at(index);
        CHECK(result.laid == other.laid);
        CHECK(result.fault == other.fault);
        CHECK(result.figures.cost == other.figures.cost);
        CHECK(result.figures.tube == other.figures.tube);
        CHECK(result.figures.safety == other.figures.safety);
    }
}

TEST_CASE("only what is wanted is worked out, and nothing after a stop") {
    const VariantStudy study = study_of("washroom", {"diameter=5 ft to 7 ft by 6 in"});
    const auto some = all_of(study, 2, {false, true, false, false, true});
    CHECK(some.size() == 2);
    CHECK(some.count(1) == 1);
    CHECK(some.count(4) == 1);
    std::atomic<bool> stop{false};
    int told = 0;
    run_variants(study, {}, 1, stop, [&](std::size_t, VariantResult) {
        ++told;
        stop = true;
    });
    CHECK(told == 1);
    CHECK_THROWS_AS(
        run_variants(study, {}, 3, std::atomic<bool>{false},
                     [](std::size_t, VariantResult) { throw std::runtime_error("full"); }),
        std::runtime_error);
}

TEST_CASE("what cannot be laid says why, and the rest is laid") {
    const VariantStudy study = study_of("grain-store", {"diameter=9 ft,2 in"});
    CHECK(work_out_variant(study, 0).laid);
    const VariantResult result = work_out_variant(study, 1);
    CHECK_FALSE(result.laid);
    CHECK(result.fault.find("inside_diameter") != std::string::npos);
    CHECK(result.figures.cost == 0);
    const VariantResult unknown =
        work_out_variant(study_of("grain-store", {"dome.store.diamter=9 ft"}), 0);
    CHECK_FALSE(unknown.laid);
    CHECK(unknown.fault.find("diamter") != std::string::npos);
    const VariantResult through =
        work_out_variant(study_of("grain-store", {"course.height.x=9 ft"}), 0);
    CHECK(through.fault.find("no table") != std::string::npos);
}
