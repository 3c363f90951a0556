#include "tests/cli/running.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

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
        CHECK(outcome.out == "");
        CHECK(outcome.err != "");
    }
}
