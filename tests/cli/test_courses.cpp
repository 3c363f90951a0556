#include "tests/cli/running.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

using namespace coilwright;
using Catch::Matchers::Contains;
using nlohmann::json;

TEST_CASE("courses prints a table in the design's unit") {
    const Outcome feet = run({"courses", in_project("models/grain-store.toml")});
    CHECK(feet.code == 0);
    CHECK(feet.err == "");
    CHECK_THAT(feet.out, Contains("4 ft 6 in")); // the compass setting of the stem
    const Outcome metres = run({"courses", in_project("models/cabin-metric.toml")});
    CHECK_THAT(metres.out, Contains("1800"));
}

// Two-centred arch of half-span a and rise h: arc radius (a^2 + h^2) / (2 a), reckoned here in
// inches.
TEST_CASE("courses gives the grain store's compass settings to 0.01 mm") {
    const json schedule =
        json::parse(run({"courses", in_project("models/grain-store.toml"), "--json"}).out);
    int rings = 0;
    for (const json& course : schedule.at("courses")) {
        for (const json& ring : course.at("rings")) {
            if (ring.at("kind") != "ring") {
                continue;
            }
            const int n = course.at("number");
            const double above_springline = (n - 0.5 - 3) * 5 - 20;
            const double reckoned =
                above_springline <= 0
                    ? 54
                    : std::sqrt(135.0 * 135.0 - above_springline * above_springline) - 81;
            CAPTURE(n);
            CHECK(ring.at("inside_radius").get<double>() == Approx(reckoned * 0.0254).margin(1e-5));
            ++rings;
        }
    }
    CHECK(rings >= 25);
}

TEST_CASE("courses prints CSV with one row a tube or short bag") {
    for (const std::string& demo : demos()) {
        CAPTURE(demo);
        const json schedule = json::parse(run({"courses", demo, "--json"}).out);
        long tubes = 0;
        for (const json& course : schedule.at("courses")) {
            for (const json& ring : course.at("rings")) {
                for (const json& one : ring.at("runs"))
                    tubes += static_cast<long>(one.at("tubes").size());
                tubes += static_cast<long>(ring.at("pieces").size());
            }
            for (const json& straight : course.at("straights"))
                tubes += static_cast<long>(straight.at("tubes").size());
        }
        const std::string csv = run({"courses", demo, "--csv"}).out;
        CHECK(std::count(csv.begin(), csv.end(), '\n') == tubes + 1);
    }
}

TEST_CASE("courses takes one form of data at a time") {
    const Outcome outcome =
        run({"courses", in_project("models/grain-store.toml"), "--json", "--csv"});
    CHECK(outcome.code == 2);
    CHECK(outcome.out == "");
    CHECK_THAT(outcome.err, Contains("--csv"));
}

TEST_CASE("courses prints no data for a wrong design") {
    for (const std::string form : {"--json", "--csv"}) {
        const Outcome outcome = run({"courses", "-", form}, "coilwright = 1\n");
        CHECK(outcome.code == 2);
        if (form == "--json") // the faults, as check --json tells them
            CHECK_FALSE(json::parse(outcome.out).at("diagnostics").empty());
        else
            CHECK(outcome.out == "");
    }
}

TEST_CASE("courses says which tops were measured, and lays the later courses from them") {
    std::ifstream file(in_project("models/grain-store.toml"));
    const std::string store{std::istreambuf_iterator<char>(file), {}};
    const std::string measured = store + "\n[as_laid]\ntop = { 9 = \"31-1/4 in\" }\n";
    const Outcome table = run({"courses", "-"}, measured);
    REQUIRE(table.code == 0);
    CHECK_THAT(table.out, Contains("2 ft 7-1/4 in"));
    CHECK_THAT(table.out, Contains("top measured"));
    CHECK_THAT(run({"courses", "-"}, store).out, !Contains("top measured"));

    const json courses = json::parse(run({"courses", "-", "--json"}, measured).out).at("courses");
    for (const json& course : courses) {
        const int n = course.at("number");
        CAPTURE(n);
        CHECK(course.at("top_measured") == (n == 9));
        const double bottom = n <= 9 ? 5.0 * (n - 4) : 31.25 + 5 * (n - 10);
        CHECK(course.at("bottom").get<double>() == Approx(bottom * 0.0254).margin(1e-5));
    }
}

TEST_CASE("measured tops that cannot be are all told at once, each at its place") {
    std::ifstream file(in_project("models/grain-store.toml"));
    const std::string store{std::istreambuf_iterator<char>(file), {}};
    const auto lines = std::count(store.begin(), store.end(), '\n');
    const Outcome refused = run(
        {"courses", "-"}, store + "[as_laid]\ntop = { 8 = \"25 in\", 9 = 31.25, 10 = \"20 in\", "
                                  "12 = \"30 in\", 300 = \"40 in\" }\n");
    CHECK(refused.code == 2);
    CHECK(refused.out == "");
    const std::string place = ":" + std::to_string(lines + 2) + ":";
    for (const std::string& told :
         {place + "26: The measured top of course 9", std::string("did you mean \"31.25 in\"?"),
          std::string("[top-off-layout]"), std::string("[tops-not-rising]"),
          std::string("[top-below-course]"), std::string("[top-of-no-course]")}) {
        CHECK_THAT(refused.err, Contains(told));
    }
}
