// checks.json has the engineer's report as data: forces that balance the weights it lists.
#include "exporters/statics_json.hpp"
#include "tests/support/demos.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace coilwright;
using namespace coilwright::testing;
using Json = nlohmann::ordered_json;

TEST_CASE("checks.json: statics of a building as data") {
    const BuildingPlan plan = demo_plan("home.toml");
    const CheckedBuilding checked = checked_building(plan);
    const Json json = Json::parse(checks_json(plan, checked));
    CHECK(json.at("findings").size() == checked.findings.size());
    const Json& statics = json.at("statics");
    REQUIRE(statics.at("domes").size() == plan.schedule.building.domes.size());
    REQUIRE(statics.at("tunnels").size() == plan.schedule.building.tunnels.size());
    CHECK(statics.at("lintels").size() == plan.schedule.lintels.size());
    for (const Json& dome : statics.at("domes")) {
        CAPTURE(dome.at("dome").get<std::string>());
        double weight = 0;
        for (const Json& course : dome.at("courses"))
            weight += course.at("weight").get<double>();
        const Json& strip = dome.at("strips")[0]; // clear of openings
        CHECK(strip.at("beside").is_null());
        // Level joints: on the ground lies all that is above (balance).
        CHECK(strip.at("lines").at("centred").back()[2].get<double>() ==
              Approx(weight).epsilon(1e-5));
        CHECK(strip.at("safety").get<double>() > 0);
    }
    for (const Json& tunnel : statics.at("tunnels")) {
        double weight = 0;
        for (const Json& course : tunnel.at("courses"))
            weight += course.at("weight").get<double>();
        CHECK(tunnel.at("lines").at("centred").back()[2].get<double>() ==
              Approx(weight).epsilon(1e-5));
        CHECK(tunnel.at("least_thrust").get<double>() <=
              tunnel.at("greatest_thrust").get<double>());
    }
    for (const auto& [table, columns] : statics.at("formulas").items())
        for (const Json& column : columns) {
            CAPTURE(table, column.at("number").get<std::string>());
            CHECK_FALSE(column.at("formula").get<std::string>().empty());
            CHECK_FALSE(column.at("source").get<std::string>().empty());
        }
    int good = 0;
    for (const Json& finding : json.at("findings"))
        good += finding.contains("good");
    CHECK(good > 0);
}
