// Faults and findings as other programs read them.
#include "exporters/schedule_json.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/schedule_checks.hpp"

#include <catch2/catch.hpp>

namespace coilwright {

TEST_CASE("faults as JSON carry every part of a diagnostic") {
    const Diagnostic fault{"unknown-key", {3, 14}, "dome.vault.rise",  "there is no key \"rise\"",
                           "one of ...",  "x = 1", "did you mean `x`?"};
    const Json json = Json::parse(diagnostics_json({fault, fault}, "odd \xff name\n.toml"));
    CHECK(json.at("format") == "coilwright-diagnostics");
    CHECK(json.at("file") == "odd \ufffd name\n.toml");
    REQUIRE(json.at("diagnostics").size() == 2);
    CHECK(json.at("diagnostics")[1] == Json{{"code", "unknown-key"},
                                            {"line", 3},
                                            {"column", 14},
                                            {"subject", "dome.vault.rise"},
                                            {"message", "there is no key \"rise\""},
                                            {"allowed", "one of ..."},
                                            {"example", "x = 1"},
                                            {"hint", "did you mean `x`?"}});
    CHECK(Json::parse(diagnostics_json({}, "f")).at("diagnostics") == Json::array());
}

TEST_CASE("findings as JSON keep their order, values and what is not known") {
    const Json json = Json::parse(findings_json(awkward_plan(), awkward_plan().findings));
    CHECK(json.at("format") == "coilwright-findings");
    REQUIRE(json.at("findings").size() == 2);
    const Json& advice = json.at("findings")[0];
    CHECK(advice.at("verdict") == "advice");
    CHECK(advice.at("value") == 0.0254);
    CHECK(advice.at("unit") == "m");
    CHECK(advice.at("line") == 31);
    CHECK(advice.at("remedy") == "=1+1, \"quoted\"");
    CHECK(json.at("findings")[1].at("value").is_null());
    CHECK(json.at("findings")[1].at("verdict") == "not judged");
    CHECK(json.at("headroom")[0].at("rows")[1].at("square") == 1.8);
}

TEST_CASE("the limits that were held against stand beside the findings, each with its source") {
    BuildingPlan plan = awkward_plan();
    plan.design.limits["egress-door.clear_width"] = {0.8128, "m",      "A code",
                                                     "2021", "R311.2", Standing::read};
    const Json json = Json::parse(findings_json(plan, {}));
    CHECK(json.at("limits").at("egress-door.clear_width") == Json{{"value", 0.8128},
                                                                  {"unit", "m"},
                                                                  {"source", "A code"},
                                                                  {"edition", "2021"},
                                                                  {"section", "R311.2"},
                                                                  {"standing", "read"}});
}

} // namespace coilwright
