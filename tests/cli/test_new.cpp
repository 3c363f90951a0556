#include "tests/cli/running.hpp"
#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cctype>
#include <set>

using namespace coilwright;
using Catch::Matchers::Contains;
using nlohmann::json;

TEST_CASE("new writes designs that can be laid, for every choice of its flags") {
    for (const std::string unit : {"ft", "m"}) {
        for (const std::string use : {"store", "habitable", "bath", "shower", "tiny-house"}) {
            for (const std::string profile : {"pointed", "round", "catenary", "parabola"}) {
                for (const std::string door : {"pointed", "round", "segmental", "square", "none"}) {
                    CAPTURE(unit, use, profile, door);
                    const Outcome made =
                        run({"new", "--unit", unit, "--use", use, "--profile", profile, "--door",
                             door, "--diameter", unit == "ft" ? "12 ft" : "3.8 m", "--out", "-"});
                    REQUIRE(made.err == "");
                    REQUIRE(made.code == 0);
                    const Outcome laid = run({"courses", "-", "--json"}, made.out);
                    REQUIRE(laid.err == "");
                    REQUIRE(laid.code == 0);
                }
            }
        }
    }
}

TEST_CASE("new takes its words in capitals as in small letters") {
    const auto written = [](const std::string& option, const std::string& value) {
        const Outcome made = run({"new", option, value, "--diameter", "12 ft", "--out", "-"});
        CHECK(made.code == 0);
        return made.out;
    };
    const std::vector<std::pair<std::string, std::vector<std::string>>> words{
        {"--unit", {"ft", "m"}},
        {"--use", {"store", "habitable", "bath", "shower", "tiny-house"}},
        {"--profile", {"pointed", "round", "catenary", "parabola"}},
        {"--door", {"pointed", "round", "segmental", "square", "none"}}};
    for (const auto& [option, values] : words) {
        std::set<std::string> texts;
        for (const std::string& small : values) {
            std::string capitals, title = small;
            for (const char c : small)
                capitals += static_cast<char>(std::toupper(static_cast<unsigned char>(c)));
            title[0] = capitals[0];
            CAPTURE(option, small);
            texts.insert(written(option, small));
            CHECK(written(option, capitals) == written(option, small));
            CHECK(written(option, title) == written(option, small));
        }
        CHECK(texts.size() == values.size()); // each word has its own meaning
    }
}

TEST_CASE("what new writes keeps its own checks") {
    for (const std::string use : {"store", "habitable", "shower", "tiny-house"}) {
        for (const std::string profile : {"pointed", "catenary", "parabola"}) {
            for (const std::string diameter :
                 {"6 ft", "9 ft", "12 ft", "2.75 m", "3.6 m", "18 ft"}) {
                // A habitable room has 70 sq ft of floor under 7 ft (IRC R304.1, R305.1): not so
                // small.
                if (use == "habitable" &&
                    (diameter == "6 ft" || diameter == "9 ft" || diameter == "2.75 m"))
                    continue;
                CAPTURE(use, profile, diameter);
                const std::string unit = diameter.back() == 'm' ? "m" : "ft";
                const Outcome made = run({"new", "--use", use, "--profile", profile, "--unit", unit,
                                          "--diameter", diameter, "--out", "-"});
                REQUIRE(made.code == 0);
                const Outcome checked = run({"check", "-"}, made.out);
                INFO(checked.out);
                CHECK(checked.code == 0);
            }
        }
    }
}

TEST_CASE("new lays a lintel over a square door") {
    for (const std::string use : {"store", "habitable"}) {
        CAPTURE(use);
        const Outcome made =
            run({"new", "--door", "square", "--use", use, "--diameter", "12 ft", "--out", "-"});
        CHECK_THAT(made.out, Contains("lintel = {}"));
        const json laid = json::parse(run({"courses", "-", "--json"}, made.out).out);
        CHECK(laid.at("elements").at("lintels").size() == 1);
        CHECK(run({"check", "-"}, made.out).code == 0);
    }
}

TEST_CASE("new names the checks that its design fails as it stands") {
    const ScratchDirectory scratch;
    const std::string file = scratch.path() / "room.toml";
    // 8 ft across hold no 70 sq ft of floor.
    const Outcome small = run({"new", "--use", "habitable", "--diameter", "8 ft", "--out", file});
    CHECK(small.code == 0);
    CHECK_THAT(small.out, Contains("fails") && Contains("headroom"));
    CHECK(run({"check", file}).code == 1);
    const Outcome store = run({"new", "--out", scratch.path() / "store.toml"});
    CHECK(store.code == 0);
    CHECK_THAT(store.out, !Contains("fails"));
}

TEST_CASE("new serves the least and the greatest diameter that it offers") {
    for (const std::string diameter : {"4 ft", "1.2 m", "19 ft", "5.79 m"}) {
        CAPTURE(diameter);
        const Outcome made =
            run({"new", "--diameter", diameter, "--door", "none", "--windows", "0", "--out", "-"});
        CHECK(made.err == "");
        CHECK(made.code == 0);
        CHECK(run({"courses", "-"}, made.out).code == 0);
    }
}

TEST_CASE("new takes a wall as many inches thick as the dome is feet wide") {
    // Common practice, no source; 17 in tubes serve 15 ft, 22 in tubes more.
    for (const std::string diameter : {"4 ft", "9 ft", "15 ft", "15 ft 1 in", "18 ft", "19 ft"}) {
        for (const std::string unit : {"ft", "m"}) {
            CAPTURE(diameter, unit);
            const Outcome made = run({"new", "--diameter", diameter, "--unit", unit, "--windows",
                                      "0", "--door", "none", "--out", "-"});
            REQUIRE(made.code == 0);
            const Outcome checked = run({"check", "-", "--json"}, made.out);
            CHECK_THAT(checked.out, !Contains("tube-narrow-for-diameter"));
        }
    }
}

TEST_CASE("new lays its openings on course joints") {
    for (const std::string unit : {"ft", "m"}) {
        for (const std::string diameter : {"9 ft", "18 ft"}) {
            CAPTURE(unit, diameter);
            const Outcome made = run({"new", "--unit", unit, "--diameter", diameter, "--out", "-"});
            const Outcome checked = run({"check", "-", "--json"}, made.out);
            CHECK_THAT(checked.out, !Contains("misses-joint"));
        }
    }
}

TEST_CASE("new fits the springline of a small washroom") {
    const Outcome made =
        run({"new", "--use", "shower", "--diameter", "6 ft", "--windows", "1", "--out", "-"});
    REQUIRE(made.code == 0);
    CHECK_THAT(made.out, Contains("springline = \"fit\""));
    // A shower has 6 ft 8 in over a square of 30 in (IRC R305.1 exception 2).
    CHECK(run({"check", "-"}, made.out).code == 0);
    // Small is up to 8 ft.
    for (const auto& [diameter, fits] : {std::pair{"8 ft", true}, {"8 ft 1 in", false}}) {
        const Outcome other = run({"new", "--use", "bath", "--diameter", diameter, "--out", "-"});
        CHECK((other.out.find("springline = \"fit\"") != std::string::npos) == fits);
    }
}

TEST_CASE("new writes lengths as people write them") {
    const std::string text = run({"new", "--diameter", "9 ft 6 in", "--out", "-"}).out;
    for (const std::string length : {"\"5 in\"", "\"17 in\"", "\"1500 ft\"", "\"9 ft 6 in\"",
                                     "\"80 in\"", "\"0 in\"", "\"20 in\""}) {
        CHECK_THAT(text, Contains(length));
    }
    CHECK_THAT(text, !Contains("ft 0 in"));
}

TEST_CASE("new keeps a name as it was typed") {
    const std::string name = "\"Seed\\store\" \xE2\x80\x99 n\xC2\xBA 3 = [x] # y";
    const Outcome made = run({"new", "--name", name, "--out", "-"});
    REQUIRE(made.code == 0);
    CHECK(json::parse(run({"courses", "-", "--json"}, made.out).out).at("name") == name);
}

TEST_CASE("new makes one line of a name with line breaks") {
    const Outcome made = run({"new", "--name", "Seed\nstore\t\x7f", "--out", "-"});
    REQUIRE(made.code == 0);
    CHECK_THAT(made.out, Contains("name = \"Seed store  \"\n"));
}

TEST_CASE("new refuses a name that is blank or too long, by its option") {
    for (const std::string& name : {std::string(), std::string(" \t "), std::string(81, 'n')}) {
        const Outcome refused = run({"new", "--name", name, "--out", "-"});
        CAPTURE(name, refused.err);
        CHECK(refused.code == 2);
        CHECK(refused.out.empty());
        CHECK_THAT(refused.err, Contains("--name: ") && Contains("1 to 80 characters"));
    }
    CHECK(run({"new", "--name", std::string(80, 'n'), "--out", "-"}).code == 0);
}

TEST_CASE("new refuses a name that is not UTF-8") {
    CHECK(run({"new", "--name", "a\xFF", "--out", "-"}).code == 2);
}

TEST_CASE("new does not write over a file unless told to") {
    const ScratchDirectory scratch;
    const std::string file = scratch.path() / "mine.toml";
    put_bytes(file, "precious");

    const Outcome refused = run({"new", "--out", file});
    CHECK(refused.code == 3);
    CHECK_THAT(refused.err, Contains("--force"));
    CHECK(bytes_of(file) == "precious");

    CHECK(run({"new", "--out", file, "--force"}).code == 0);
    CHECK(run({"check", file}).code == 0);
    CHECK(all_below(scratch.path()) == std::vector<std::string>{"mine.toml"});
}

TEST_CASE("new says where it cannot write") {
    const ScratchDirectory scratch;
    const Outcome folder = run({"new", "--out", scratch.path()});
    CHECK(folder.code == 3);
    CHECK_THAT(folder.err, Contains("is a directory"));

    put_bytes(scratch.path() / "file", "");
    CHECK(run({"new", "--out", scratch.path() / "file" / "x.toml"}).code == 3);
    CHECK(all_below(scratch.path()) == std::vector<std::string>{"file"});
}

TEST_CASE("new refuses what it cannot lay, and writes nothing") {
    const ScratchDirectory scratch;
    const std::string file = scratch.path() / "x.toml";
    const auto refused = [&](const std::vector<std::string>& flags) {
        std::vector<std::string> arguments{"new", "--out", file};
        arguments.insert(arguments.end(), flags.begin(), flags.end());
        const Outcome outcome = run(arguments);
        CHECK(outcome.code == 2);
        CHECK(outcome.out == "");
        CHECK(all_below(scratch.path()).empty());
        return outcome.err;
    };
    CHECK_THAT(refused({"--diameter", "9 bananas"}), Contains("--diameter"));
    CHECK_THAT(refused({"--diameter", "1000 ft"}), Contains("--diameter"));
    CHECK_THAT(refused({"--diameter", "nan"}), Contains("--diameter"));
    CHECK_THAT(refused({"--diameter", "-3 ft"}), Contains("--diameter"));
    CHECK_THAT(refused({"--windows", "7"}), Contains("--windows"));
    CHECK_THAT(refused({"--windows", "many"}), Contains("--windows"));
    CHECK_THAT(refused({"--unit", "ell"}), Contains("--unit"));
    CHECK_THAT(refused({"--profile", "drawn"}), Contains("--profile"));
    // Six windows of 16 in and a door do not fit around 12.6 ft of wall with a tube between each.
    CHECK_THAT(refused({"--diameter", "4 ft", "--windows", "6"}), Contains("cannot be laid"));
}
