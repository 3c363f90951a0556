// Less friction and more load: what they may and may not do to the verdicts.
#include "geometry/checks/check_building.hpp"
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "tests/checks/laid.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const Finding* same_check(const std::vector<Finding>& all, const Finding& finding) {
    for (const Finding& other : all)
        if (other.code == finding.code && other.subject == finding.subject)
            return &other;
    return nullptr;
}

} // namespace

TEST_CASE("less friction of the joints makes no verdict better") {
    int slid = 0;
    for (const char* demo : {"grain-store.toml", "washroom.toml", "retreat.toml"}) {
        BuildingPlan plan = demo_plan(demo);
        plan.design.joint.friction_stated = plan.design.ground.friction_stated = true;
        plan.design.ground.bearing_capacity = 500e3;
        Fill strong; // so that crushing can hold
        strong.id = "all";
        strong.strength = 2.144e6;
        plan.design.fills = {strong};
        std::vector<Finding> before;
        for (const double friction : {0.9, 0.7, 0.6, 0.5, 0.42, 0.35, 0.28, 0.2, 0.12}) {
            plan.design.joint.friction = friction;
            std::vector<Finding> now = check_building(plan);
            for (const Finding& finding : now) {
                CAPTURE(demo, friction, finding.code, finding.subject, finding.message);
                slid += finding.message.find("at the friction of the joints") != std::string::npos;
                if (const Finding* old = same_check(before, finding)) {
                    CAPTURE(old->message);
                    CHECK(badness(finding.verdict) >= badness(old->verdict));
                }
            }
            CHECK((before.empty() || before.size() == now.size()));
            before = std::move(now);
        }
    }
    CHECK(slid > 10);
}

TEST_CASE("a strip for which no friction would do is the worst of all") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const DomeForm& dome = plan.schedule.building.domes[0];
    DomeAnalysis analysis = analyse_dome(plan.design, plan.schedule.building, dome);
    StripStatics& beside = analysis.statics.strips.back();
    REQUIRE_FALSE(beside.beside.empty());
    beside.friction.line.stands = false;
    const Finding found = the(dome_findings(plan.design, dome, analysis), "joint-sliding");
    CHECK(found.verdict == Verdict::fails);
    CHECK(found.value.value() == 0);
    CHECK(found.message.find("'" + beside.beside + "'") != std::string::npos);
}

TEST_CASE("stated snow is judged too, and the worse is told") {
    for (const char* demo : {"grain-store.toml", "retreat.toml"}) {
        BuildingPlan plan = demo_plan(demo);
        plan.design.site.snow.reset();
        const std::vector<Finding> bare = check_building(plan);
        plan.design.site.snow = 0; // none
        CHECK(check_building(plan).size() == bare.size());
        plan.design.site.snow = 20e3;
        int changed = 0, pressures = 0;
        for (const Finding& finding : check_building(plan)) {
            CAPTURE(demo, finding.code, finding.subject, finding.message);
            const Finding* without = same_check(bare, finding);
            REQUIRE(without);
            CHECK(badness(finding.verdict) >= badness(without->verdict));
            changed += finding.value != without->value;
            if (finding.code == "ground-pressure" || finding.code == "tunnel-ground") {
                // Where the joints slide no pressure is told, or no longer.
                if (finding.value) {
                    REQUIRE(without->value);
                    CHECK(*finding.value >= *without->value);
                    pressures += *finding.value > *without->value;
                } else
                    CHECK(finding.message.find("no pressure is told") != std::string::npos);
                CHECK(finding.message.find("snow of ") != std::string::npos);
            }
        }
        CHECK(changed > 5);
        CHECK(pressures > 0);
    }
    // The report's analysis finds the same.
    BuildingPlan plan = demo_plan("retreat.toml");
    plan.design.site.snow = 20e3;
    const std::vector<Finding> quick = all_findings(plan);
    const std::vector<Finding> whole = checked_building(plan).findings;
    REQUIRE(quick.size() == whole.size());
    for (std::size_t i = 0; i < quick.size(); ++i)
        CHECK((quick[i].message == whole[i].message && quick[i].value == whole[i].value));
}

TEST_CASE("what the best published fill would not bear fails, whatever is stated") {
    const auto heavy = [](double density, bool measured) {
        BuildingPlan plan = demo_plan("grain-store.toml");
        Fill fill; // no strength stated
        fill.id = "all";
        fill.density = density;
        plan.design.fills = {fill};
        plan.design.joint.friction_stated = measured;
        return the(check_building(plan), "fill-crushing");
    };
    // Absurdly heavy: well over the 2.144 MPa of Dunbar & Wipplinger 2006.
    const Finding weak = heavy(1e6, true);
    CHECK(weak.verdict == Verdict::fails);
    CHECK(weak.message.find("best published") != std::string::npos);
    CHECK(weak.remedy.find("wider tube") != std::string::npos);
    // A line that a default of friction keeps near an edge fails nothing.
    const Finding unmeasured = heavy(1e6, false);
    CHECK(unmeasured.verdict == Verdict::advice);
    CHECK(unmeasured.remedy.find("Measure the friction") != std::string::npos);
    CHECK(the(check_building(demo_plan("grain-store.toml")), "fill-crushing").verdict ==
          Verdict::advice);
}

TEST_CASE("the value of the stages decides their verdict") {
    int leaning = 0;
    for (const char* demo : {"grain-store.toml", "washroom.toml", "workshop.toml", "retreat.toml",
                             "cabin-metric.toml", "square-door.toml", "seed-house.toml"})
        for (const Finding& finding : check_building(demo_plan(demo))) {
            if (finding.code != "open-stages" || finding.verdict == Verdict::not_judged)
                continue;
            CAPTURE(demo, finding.subject, finding.message);
            CHECK((*finding.value < *finding.limit) == (finding.verdict != Verdict::holds));
            leaning += finding.verdict == Verdict::advice;
        }
    CHECK(leaning > 0);
}

TEST_CASE("a pressure over all that codes presume is told with its remedy") {
    BuildingPlan plan = demo_plan("grain-store.toml");
    plan.design.ground.bearing_capacity.reset();
    const Finding light = the(check_building(plan), "ground-pressure");
    for (Limits::iterator i = plan.design.limits.begin(); i != plan.design.limits.end(); ++i)
        if (i->first.rfind("soil.", 0) == 0)
            i->second.value = *light.value * 0.9;
    const Finding heavy = the(check_building(plan), "ground-pressure");
    CHECK(heavy.remedy.find("is more than all that codes presume") != std::string::npos);
    CHECK(heavy.remedy.find(pressure_text(*heavy.value, plan.design.unit)) != std::string::npos);
    CHECK(heavy.message.find("advice") == std::string::npos);
}
