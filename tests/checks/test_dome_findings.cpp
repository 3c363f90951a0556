// What is found of the demo domes, and how it follows the rules.
#include "geometry/checks/building_statics.hpp"
#include "geometry/checks/check_building.hpp"
#include "tests/checks/laid.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("the grain store's geometric factor of safety is that of docs/concepts/statics.md") {
    const std::vector<Finding> findings = check_building(demo_plan("grain-store.toml"));
    const auto found = std::find_if(findings.begin(), findings.end(), [](const Finding& finding) {
        return finding.code == "geometric-safety";
    });
    REQUIRE(found != findings.end());
    CHECK(found->subject == "dome.store");
    CHECK(*found->value == Approx(1.4).margin(0.05));
    CHECK(found->verdict == Verdict::advice);
    CHECK(found->message.find("'door'") != std::string::npos);
}

namespace {

const Finding& one(const std::vector<Finding>& findings, const std::string& code,
                   const std::string& subject) {
    const auto found = std::find_if(findings.begin(), findings.end(), [&](const Finding& finding) {
        return finding.code == code && finding.subject == subject;
    });
    REQUIRE(found != findings.end());
    return *found;
}

} // namespace

TEST_CASE("demo designs: every statics finding has its value, formula and source, none fails") {
    for (const char* demo : {"grain-store.toml", "washroom.toml", "workshop.toml", "home.toml",
                             "retreat.toml", "cabin-metric.toml", "square-door.toml"}) {
        CAPTURE(demo);
        for (const Finding& finding : check_building(demo_plan(demo))) {
            CAPTURE(finding.code, finding.subject, finding.message);
            CHECK(finding.verdict != Verdict::fails);
            CHECK_FALSE(finding.message.empty());
            CHECK(finding.message.find("safe") == std::string::npos);
            if (finding.formula.empty())
                continue; // not of the statics
            CHECK_FALSE(finding.source.empty());
            if (finding.verdict == Verdict::advice || finding.verdict == Verdict::not_judged)
                CHECK_FALSE(finding.remedy.empty());
        }
    }
}

TEST_CASE("stages and the stem are judged beside openings, against a linear program of its own") {
    // Reckoned apart, in Python, from the geometry alone: with course 19 laid and no form the strip
    // beside the door keeps within joints 0.938 times as wide, and clear of all openings 1.09 times
    // narrower ones; at the friction of 0.5 the stem beside the door is tipped at 1.61 and slides
    // at 3.75 times the thrust, at the friction assumed.
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const DomeForm& dome = plan.schedule.building.domes.front();
    const DomeAnalysis analysis = analyse_dome(plan.design, plan.schedule.building, dome);
    DomeSlice beside;
    beside.first = analysis.springline_course;
    beside.beside = "door";
    CHECK(1 / building_stage(analysis.statics.courses, beside, 19).share ==
          Approx(0.938).margin(1e-3));
    DomeSlice clear = beside;
    clear.beside.reset();
    CHECK(1 / building_stage(analysis.statics.courses, clear, 19).share ==
          Approx(1.09).margin(0.005));
    // With the door's form in its hole, which its sheets keep to the end, the other rings press
    // through it: no better than if no opening broke a ring.
    DomeSlice whole = beside, formed = beside;
    whole.ignore_gaps = true;
    formed.propped = {"door"};
    const auto safety = [&](const DomeSlice& what) {
        return 1 / building_stage(analysis.statics.courses, what, 19).share;
    };
    CHECK(safety(formed) > safety(beside) + 0.1);
    CHECK(safety(formed) <= safety(whole) + 1e-9);
    formed.propped = {"door", "east", "west"};
    CHECK(safety(formed) == Approx(safety(whole)));
    const std::vector<Finding> findings = check_building(plan);
    CHECK(*one(findings, "stem-overturning", "dome.store").value == Approx(1.61).margin(0.005));
    CHECK(*one(findings, "stem-sliding", "dome.store").value == Approx(3.75).margin(0.005));
    const Finding& stages = one(findings, "open-stages", "dome.store");
    // The forms stay in as long as the sheets say; what the wall bears without them decides.
    CHECK(*stages.value <= Approx(0.938).margin(0.002));
    CHECK(*stages.value < *stages.limit);
    CHECK(stages.verdict == Verdict::advice);
    CHECK(stages.message.find("leans on them") != std::string::npos);
    CHECK(stages.remedy.find("Brace the form") != std::string::npos);
}

TEST_CASE("the factor of safety is told where joints may not slide too") {
    // Reckoned apart, in Python, at friction 0.5: 1.24 of the grain store, 1.40 without sliding.
    const Finding safety =
        one(check_building(demo_plan("grain-store.toml")), "geometric-safety", "dome.store");
    CHECK(*safety.value == Approx(1.40).margin(0.005));
    CHECK(safety.message.find("at the friction taken, 0.500, the factor is 1.24") !=
          std::string::npos);
}

TEST_CASE("what is told to do does") {
    BuildingPlan plan = demo_plan("grain-store.toml");
    plan.design.joint.friction_stated = true;
    const auto number = [](const std::string& text, const std::string& after) {
        return std::stod(text.substr(text.find(after) + after.size()));
    };
    const Finding sliding = one(check_building(plan), "joint-sliding", "dome.store");
    plan.design.joint.friction = number(sliding.remedy, "the wire between them; ");
    CHECK(one(check_building(plan), "joint-sliding", "dome.store").verdict == Verdict::holds);
    plan = demo_plan("grain-store.toml");
    const Finding crushing = one(check_building(plan), "fill-crushing", "dome.store");
    Fill fill;
    fill.id = "main";
    fill.strength = number(crushing.remedy, "Test cylinders of the fill: ") * 6894.757293168;
    plan.design.fills = {fill};
    CHECK(one(check_building(plan), "fill-crushing", "dome.store").verdict == Verdict::holds);
}

TEST_CASE("a capacity of the ground turns its pressure from not judged to a verdict") {
    BuildingPlan plan = demo_plan("washroom.toml");
    plan.design.ground.bearing_capacity.reset();
    const Finding unknown = one(check_building(plan), "ground-pressure", "dome.wash");
    CHECK(unknown.verdict == Verdict::not_judged);
    REQUIRE(unknown.value);
    // At least the weight over the whole flat, by hand from the courses.
    const BuildingStatics statics = building_statics(plan);
    const std::vector<WallCourse>& courses = statics.domes[0].statics.courses;
    double weight = 0;
    for (const WallCourse& course : courses)
        weight += course.weight * (1 - course.open_share);
    CHECK(*unknown.value > weight / courses[0].contact_outer / courses[0].contact_width());
    plan.design.ground.bearing_capacity = *unknown.value * 1.01;
    CHECK(one(check_building(plan), "ground-pressure", "dome.wash").verdict == Verdict::holds);
    plan.design.ground.bearing_capacity = *unknown.value * 0.99;
    const Finding fails = one(check_building(plan), "ground-pressure", "dome.wash");
    CHECK(fails.verdict == Verdict::fails);
    CHECK_FALSE(fails.remedy.empty());
}

TEST_CASE("friction decides the sliding of joints; a stated strength decides crushing") {
    BuildingPlan plan = demo_plan("grain-store.toml");
    plan.design.joint.friction_stated = true; // stated: a default would only be an advice
    const double needed = plan.design.joint.friction /
                          *one(check_building(plan), "joint-sliding", "dome.store").value;
    const auto verdict = [&](double friction) {
        plan.design.joint.friction = friction;
        return one(check_building(plan), "joint-sliding", "dome.store").verdict;
    };
    CHECK(verdict(needed * 0.99) == Verdict::fails);
    CHECK(verdict(needed * 1.01) == Verdict::advice);
    CHECK(verdict(needed * 1.51) == Verdict::holds);

    const Finding by_default = one(check_building(plan), "fill-crushing", "dome.store");
    CHECK(by_default.verdict == Verdict::advice);
    Fill fill;
    fill.id = "all";
    fill.strength = 2.144e6; // the published soil-filled prism, 311 psi (Dunbar & Wipplinger 2006)
    plan.design.fills = {fill};
    const Finding soil = one(check_building(plan), "fill-crushing", "dome.store");
    CHECK(soil.verdict == Verdict::holds);
    CHECK(*soil.value == Approx(*by_default.value * 2.144 / 0.297).epsilon(0.01));
    plan.design.fills[0].strength = 0.1e6;
    CHECK(one(check_building(plan), "fill-crushing", "dome.store").verdict == Verdict::fails);
}

TEST_CASE("a default friction on the ground fails nothing, a stated one does") {
    BuildingPlan plan = demo_plan("home.toml");
    plan.design.ground.friction = 0.01;
    for (const bool stated : {false, true}) {
        plan.design.ground.friction_stated = stated;
        int judged = 0;
        for (const Finding& finding : check_building(plan)) {
            if ((finding.code != "stem-sliding" && finding.code != "buttress-sliding" &&
                 finding.code != "tunnel-abutment") ||
                finding.verdict == Verdict::not_judged)
                continue;
            CAPTURE(finding.code, finding.subject, finding.message);
            ++judged;
            CHECK(finding.verdict == (stated ? Verdict::fails : Verdict::advice));
            CHECK((finding.message.find("friction on the ground is a default") !=
                   std::string::npos) == !stated);
        }
        CHECK(judged >= 4);
    }
    // The key decides, not its table.
    const std::string level = "level = \"-6 in\"";
    for (const std::string& written : {level, "friction = 0.4\n" + level})
        CHECK(laid(with(room_design, level, written)).design.ground.friction_stated ==
              (written != level));
}

TEST_CASE("a bank whose earth is not stated leaves sliding and overturning unjudged") {
    BuildingPlan plan = demo_plan("washroom.toml");
    plan.design.ground.level = 3 * plan.design.course.height;
    plan.design.ground.unit_weight.reset();
    CHECK(one(check_building(plan), "stem-sliding", "dome.wash").verdict == Verdict::not_judged);
    CHECK(one(check_building(plan), "stem-overturning", "dome.wash").verdict ==
          Verdict::not_judged);
}

TEST_CASE("the site's acceleration and wind are held against the slice; less is an advice") {
    BuildingPlan plan = demo_plan("workshop.toml");
    const Finding bare = one(check_building(plan), "earthquake-slice", "dome.shop");
    CHECK(bare.verdict == Verdict::not_judged);
    REQUIRE(bare.value);
    plan.design.site.seismic_acceleration = *bare.value * 9.80665 * 0.99;
    CHECK(one(check_building(plan), "earthquake-slice", "dome.shop").verdict == Verdict::holds);
    plan.design.site.seismic_acceleration = *bare.value * 9.80665 * 1.01;
    CHECK(one(check_building(plan), "earthquake-slice", "dome.shop").verdict == Verdict::advice);
    const double wind = *one(check_building(plan), "wind-slice", "dome.shop").value;
    plan.design.site.wind_pressure = wind * 0.99;
    CHECK(one(check_building(plan), "wind-slice", "dome.shop").verdict == Verdict::holds);
}

TEST_CASE("domes in open plan are not judged where their broken rings alone would not do") {
    const std::vector<Finding> findings = check_building(demo_plan("home.toml"));
    const Finding& hall = one(findings, "geometric-safety", "dome.hall");
    CHECK(hall.verdict == Verdict::not_judged);
    CHECK(*hall.value < 1);
    CHECK(hall.message.find("'sleep'") != std::string::npos);
}

TEST_CASE("size alone changes no factor, and pressures grow with it") {
    const auto scaled = [](double k) {
        BuildingPlan plan = demo_plan("washroom.toml");
        Design design = plan.design;
        design.fills.clear();
        // All lengths that the washroom's walls are made of.
        design.course.height *= k;
        for (TubeType& tube : design.tubes) {
            tube.lay_flat *= k;
            if (tube.tamped_width)
                tube.tamped_width = *tube.tamped_width * k;
        }
        for (Dome& dome : design.domes) {
            dome.fit_springline = false; // as fitted
            dome.fit = {};
            dome.at *= k;
            dome.inside_diameter *= k;
            dome.springline *= k;
            if (dome.profile.rise)
                dome.profile.rise = *dome.profile.rise * k;
            if (dome.profile.arc_radius)
                dome.profile.arc_radius = *dome.profile.arc_radius * k;
        }
        for (Opening& opening : design.openings) {
            opening.width *= k;
            opening.sill *= k;
            opening.height *= k;
            if (opening.head.rise)
                opening.head.rise = *opening.head.rise * k;
        }
        design.sleeves.clear();
        design.finish.inside_plaster *= k;
        design.finish.outside_plaster *= k;
        design.ground.level *= k;
        design.trench.gravel_depth *= k;
        BuildingPlan larger = plan_building(design, {});
        REQUIRE(larger.sound());
        return check_building(larger);
    };
    const std::vector<Finding> small = scaled(1), large = scaled(1.25);
    for (const char* code : {"geometric-safety", "joint-sliding", "stem-sliding",
                             "stem-overturning", "earthquake-slice"}) {
        CAPTURE(code);
        CHECK(*one(small, code, "dome.wash").value ==
              Approx(*one(large, code, "dome.wash").value).epsilon(1e-4));
    }
    CHECK(*one(large, "fill-crushing", "dome.wash").value ==
          Approx(*one(small, "fill-crushing", "dome.wash").value / 1.25).epsilon(1e-4));
    CHECK(*one(large, "wind-slice", "dome.wash").value ==
          Approx(*one(small, "wind-slice", "dome.wash").value * 1.25).epsilon(1e-4));
}
