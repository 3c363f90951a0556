#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>
#include <sstream>

using namespace coilwright;
using Catch::Matchers::Contains;
using nlohmann::json;

namespace {

/// A habitable room has 70 sq ft (IRC R304.1); one of 8 ft has 50 less its plaster.
std::string too_small_room() {
    const Outcome made = run({"new", "--use", "habitable", "--diameter", "8 ft", "--out", "-"});
    REQUIRE(made.code == 0);
    return made.out;
}

} // namespace

TEST_CASE("check of a sound design ends with 0 and shows headroom and caution") {
    const Outcome outcome = run({"check", in_project("models/grain-store.toml")});
    CHECK(outcome.code == 0);
    CHECK(outcome.err == "");
    CHECK_THAT(outcome.out, Contains("Grain store, Alder Flats"));
    CHECK_THAT(outcome.out, Contains("Headroom"));
    CHECK_THAT(outcome.out, Contains("licensed professional"));
    CHECK_THAT(outcome.out, !Contains("safe ") && !Contains("safe."));
}

TEST_CASE("check tells from where on a value is good, and pressures in the design's unit") {
    // A factor of 2 (Heyman 1966, 1982, from memory); ordinary sawn timber 1000 psi (a judgement).
    CHECK_THAT(run({"check", in_project("models/grain-store.toml"), "--long"}).out,
               Contains("1.40; at least 1.00, good from 2.00"));
    CHECK_THAT(run({"check", in_project("models/grain-store.toml")}).out,
               Contains("geometric-safety  1.40 against 1.00, good from 2.00"));
    const Outcome lintel = run({"check", in_project("models/square-door.toml"), "--long"});
    CHECK_THAT(lintel.out, Contains("psi; limit 1000 psi"));
    CHECK_THAT(lintel.out, !Contains(" Pa"));
    CHECK_THAT(run({"check", in_project("models/cabin-metric.toml"), "--long"}).out,
               Contains("limit 6.89 MPa"));
}

TEST_CASE("check is short, and tells all with --long") {
    for (const std::string& demo : demos()) {
        CAPTURE(demo);
        const json printed = json::parse(run({"check", demo, "--json"}).out);
        const Outcome brief = run({"check", demo}), whole = run({"check", demo, "--long"});
        CHECK(brief.code == whole.code);
        CHECK(brief.out.size() < whole.out.size());
        CHECK_THAT(brief.out, !Contains("Source: "));
        // Lines are broken anywhere, so words are compared.
        const auto words = [](const std::string& text) {
            std::istringstream stream(text);
            std::string joined;
            for (std::string word; stream >> word;)
                joined += word + ' ';
            return joined;
        };
        const std::string short_words = words(brief.out), long_words = words(whole.out);
        for (const auto& finding : printed.at("findings")) {
            CAPTURE(finding.at("code"), finding.at("subject"));
            for (const std::string& text : {short_words, long_words}) {
                CHECK_THAT(text, Contains(finding.at("code").get<std::string>()));
                CHECK_THAT(text, Contains(finding.at("subject").get<std::string>()));
                if (finding.at("verdict") != "holds" && finding.contains("remedy"))
                    CHECK_THAT(text, Contains(words(finding.at("remedy"))));
            }
        }
    }
}

TEST_CASE("check shows the headroom along tunnels and the building on the ground") {
    const Outcome outcome = run({"check", in_project("models/home.toml")});
    CHECK_THAT(outcome.out, Contains("porch: 9 ft 0-1/2 in over its middle"));
    CHECK_THAT(outcome.out, Contains("Floor between the bags: "));
    CHECK_THAT(outcome.out, Contains("Footprint over the outside faces: "));
    CHECK_THAT(outcome.out, Contains("First course, for the trench: "));
    // A dome of 9 ft in a wall of 15 in: pi 4.5^2 and pi 5.75^2, the grain store.
    const Outcome store = run({"check", in_project("models/grain-store.toml")});
    CHECK_THAT(store.out, Contains("Floor between the bags: 63.6 sq ft, 28 ft 3-1/4 in around"));
    CHECK_THAT(store.out, Contains("over the outside faces: 103.9 sq ft, 36 ft 1-1/2 in around"));
    CHECK_THAT(run({"courses", in_project("models/grain-store.toml")}).out,
               Contains("First course, for the trench: 40.3 sq ft"));
    const json printed = json::parse(run({"check", in_project("models/home.toml"), "--json"}).out);
    CHECK(printed.at("tunnel_headroom").size() == 2);
    CHECK(printed.at("ground").at("floor").at("area").get<double>() > 40);
}

TEST_CASE("check tells what was fitted") {
    const Outcome outcome = run({"check", in_project("models/washroom.toml")});
    CHECK_THAT(outcome.out, Contains("Fitted:"));
    CHECK_THAT(outcome.out, Contains("6 ft 8 in"));
}

TEST_CASE("check ends with 1 when a check fails") {
    const std::string room = too_small_room();
    const Outcome outcome = run({"check", "-"}, room);
    CHECK(outcome.code == 1);
    CHECK_THAT(outcome.out, Contains("fails"));
    CHECK(run({"check", "-", "--json"}, room).code == 1);
}

TEST_CASE("check prints findings as JSON") {
    for (const std::string& demo : demos()) {
        CAPTURE(demo);
        const Outcome outcome = run({"check", demo, "--json"});
        const json printed = json::parse(outcome.out);
        const auto& findings = printed.at("findings");
        bool failing = false;
        for (const auto& finding : findings) {
            CHECK(finding.at("code").is_string());
            CHECK(finding.at("subject").is_string());
            failing = failing || finding.at("verdict") == "fails";
        }
        CHECK(outcome.code == (failing ? 1 : 0));
    }
}

// python3-jsonschema, draft 2020-12.
TEST_CASE("what check prints of every demo keeps to the published schema") {
    const ScratchDirectory scratch;
    std::vector<std::string> command{"/usr/bin/python3",
                                     in_project("tests/exporters/validate_json.py"),
                                     in_project("docs/reference/checks.schema.json")};
    const auto add = [&](const std::string& bytes) {
        command.push_back((scratch.path() / (std::to_string(command.size()) + ".json")).string());
        put_bytes(command.back(), bytes);
    };
    for (const std::string& demo : demos())
        add(run({"check", demo, "--json"}).out);
    const std::string mended =
        run({"check", in_project("models/cabin-metric.toml"), "--remedies", "--json"}).out;
    CHECK_THAT(mended, Contains("\"changes\": [\n"));
    add(mended);
    const std::string said = output_of(command);
    CHECK(std::count(said.begin(), said.end(), '\n') ==
          static_cast<std::ptrdiff_t>(demos().size()) + 1);

    // It does refuse.
    const auto refused = [&](const auto& spoil) {
        json broken = json::parse(mended);
        spoil(broken);
        put_bytes(command.back(), broken.dump());
        return command;
    };
    CHECK_THROWS_WITH(output_of(refused([](json& j) { j["findings"][0]["verdict"] = "maybe"; })),
                      Contains("/findings/0/verdict"));
    CHECK_THROWS_WITH(output_of(refused([](json& j) { j["rooms"][0].erase("volume"); })),
                      Contains("'volume' is a required property"));
    CHECK_THROWS_WITH(output_of(refused([](json& j) { j["limits"].begin()->erase("source"); })),
                      Contains("'source' is a required property"));
    CHECK_THROWS_WITH(output_of(refused([](json& j) {
                          for (json& finding : j["findings"])
                              if (finding.contains("changes") && !finding["changes"].empty())
                                  finding["changes"][0]["from"] = "low";
                      })),
                      Contains("/changes/0/from"));
}

TEST_CASE("check reads standard input and names it") {
    const Outcome outcome = run({"check", "-"}, "coilwright = 1\nbogus = 2\n");
    CHECK(outcome.code == 2);
    CHECK_THAT(outcome.err, Contains("standard input:2:1"));
}

TEST_CASE("check prints faults as JSON on standard output") {
    const Outcome outcome = run({"check", "-", "--json"}, "coilwright = 1\nbogus = 2\n");
    CHECK(outcome.code == 2);
    CHECK(outcome.err == "");
    const json printed = json::parse(outcome.out);
    REQUIRE(printed.at("diagnostics").is_array());
    CHECK(std::any_of(printed["diagnostics"].begin(), printed["diagnostics"].end(),
                      [](const json& one) { return one.at("line") == 2; }));
}

TEST_CASE("check --remedies tells what would mend what does not hold, and only then") {
    const std::string demo = in_project("models/cabin-metric.toml");
    const Outcome plain = run({"check", demo});
    CHECK(plain.out.find("Change: ") == std::string::npos);
    const Outcome text = run({"check", demo, "--remedies"});
    CHECK(text.code == plain.code);
    CHECK_THAT(text.out, Contains("Change: ["));
    const json told = json::parse(run({"check", demo, "--remedies", "--json"}).out);
    int changes = 0;
    for (const auto& finding : told.at("findings")) {
        const std::string verdict = finding.at("verdict");
        CHECK(finding.contains("changes") == (verdict == "fails" || verdict == "advice"));
        if (finding.contains("changes"))
            for (const auto& change : finding["changes"]) {
                ++changes;
                CHECK(change.at("from") != change.at("to"));
                CHECK(change.at("worsens").is_array());
            }
    }
    CHECK(changes > 0);

    const ScratchDirectory scratch;
    const Outcome built = run({"build", demo, "--out", (scratch.path() / "cabin").string(),
                               "--only", "checks", "--remedies"});
    CHECK(built.code == 0);
    const json written = json::parse(bytes_of(scratch.path() / "cabin" / "checks.json"));
    CHECK(written.at("findings") == told.at("findings"));
    const std::string report =
        output_of({"pdftotext", (scratch.path() / "cabin" / "engineer.pdf").string(), "-"});
    CHECK_THAT(report, Contains("Change: ["));
}
