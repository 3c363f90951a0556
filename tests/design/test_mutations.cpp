// Seeded random damage to a sound design: never a crash, never a fault that goes unreported.
#include "tests/design/design_dump.hpp"
#include "tests/design/whole_design.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;

namespace {

const std::vector<std::string> tokens{"\"",       "'",       "[",    "]",   "{",    "}",
                                      "=",        ".",       ",",    "#",   "\n",   " ",
                                      "-",        "0",       "1",    "9e9", "nan",  "-inf",
                                      "\"9 ft\"", "\"\"",    "true", "fit", "\xFF", "\xE2\x80\xB3",
                                      "½",        "\"fit\"", "[[",   "]]"};

std::string mutated(std::string text, Seeded& random) {
    for (int n = random.whole(1, 3); n > 0; --n) {
        const auto at =
            static_cast<std::size_t>(random.whole(0, static_cast<int>(text.size()) - 1));
        const auto length = static_cast<std::size_t>(random.whole(1, 12));
        switch (random.whole(0, 4)) {
        case 0:
            text[at] = static_cast<char>(random.whole(1, 255));
            break;
        case 1:
            text.erase(at, length);
            break;
        case 2:
            text.insert(at, random.one_of(tokens));
            break;
        case 3:
            text.replace(at, length, random.one_of(tokens));
            break;
        default:
            text.insert(at, text.substr(static_cast<std::size_t>(
                                            random.whole(0, static_cast<int>(text.size()) - 1)),
                                        length));
        }
    }
    return text;
}

// What holds of every reading, whatever the text.
void check_reading(const DesignReading& reading) {
    int line = 0, column = 0;
    for (const Diagnostic& d : reading.diagnostics) {
        REQUIRE_FALSE(d.code.empty());
        REQUIRE_FALSE(d.message.empty());
        REQUIRE_FALSE(d.allowed.empty());
        REQUIRE_FALSE(d.example.empty());
        REQUIRE((d.place.line > line || (d.place.line == line && d.place.column >= column)));
        line = d.place.line;
        column = d.place.column;
    }
    // Without diagnostics everything is sound; with any, what is still sound has its numbers.
    for (const Dome& dome : reading.design.domes) {
        if (reading.diagnostics.empty())
            REQUIRE(dome.sound);
        if (dome.sound && !dome.fit_diameter)
            REQUIRE((std::isfinite(dome.inside_diameter) && dome.inside_diameter >= 0.499));
        if (dome.sound)
            REQUIRE(find_tube(reading.design, dome.tube)->sound);
    }
    for (const Opening& opening : reading.design.openings) {
        if (reading.diagnostics.empty())
            REQUIRE(opening.sound);
        if (opening.sound)
            REQUIRE((opening.width > 0 && opening.height > 0 && opening.bearing.degrees >= 0 &&
                     opening.bearing.degrees < 360));
    }
}

} // namespace

TEST_CASE("a damaged design is read or refused, the same way twice") {
    constexpr std::uint64_t seed = 1001;
    CAPTURE(seed);
    Seeded random(seed);
    int refused = 0, parsed = 0;
    for (int i = 0; i < 3000; ++i) {
        const std::string text = mutated(whole_design, random);
        INFO("mutation " << i);
        const DesignReading reading = read_design(text);
        check_reading(reading);
        refused += reading.diagnostics.empty() ? 0 : 1;
        parsed += codes_of(reading) != "not-toml" ? 1 : 0;
        if (i % 10 == 0) {
            const DesignReading again = read_design(text);
            REQUIRE(codes_of(again) == codes_of(reading));
            REQUIRE(design_dump(again.design) == design_dump(reading.design));
        }
    }
    CHECK(refused > 1000);
    CHECK(parsed > 500);
}

TEST_CASE("a needed key that is gone is missed, whatever else is damaged") {
    constexpr std::uint64_t seed = 1002;
    CAPTURE(seed);
    Seeded random(seed);
    std::vector<std::string> lacking; // the design with one needed line taken out
    for (std::size_t start = 0; start < whole_design.size();) {
        const std::size_t end = whole_design.find('\n', start) + 1;
        std::string text = whole_design;
        text.erase(start, end - start);
        const bool is_key =
            whole_design.substr(start, end - start).find(" = ") != std::string::npos;
        if (is_key && codes_of(read_design(text)) == "missing-key")
            lacking.push_back(text);
        start = end;
    }
    REQUIRE(lacking.size() > 40);
    for (const std::string& text : lacking)
        for (int i = 0; i < 20; ++i) {
            const std::string damaged = mutated(text, random);
            CAPTURE(damaged);
            REQUIRE_FALSE(read_design(damaged).diagnostics.empty());
        }
}

TEST_CASE("one fault is one diagnostic, and five are five") {
    std::string text = whole_design;
    text = replaced(text, "width = \"32 in\"", "widht = \"32 in\"");                // misspelt
    text = replaced(text, "height = \"12 in\"\nhead", "height = \"12 inn\"\nhead"); // wrong unit
    text = replaced(text, "tube = \"main\"\ndatum", "tube = \"mian\"\ndatum");      // no such tube
    text = replaced(text, "inside_diameter = 6", "inside_diameter = 600");          // out of range
    text = replaced(text, "bearing = 60\n", "");                                    // missing
    const DesignReading reading = read_design(text);
    CHECK(codes_of(reading) ==
          "unknown-reference out-of-range unknown-key unreadable-measure missing-key");
    std::vector<int> lines;
    for (const Diagnostic& d : reading.diagnostics)
        lines.push_back(d.place.line);
    CHECK(lines == std::vector<int>{33, 40, 58, 72, 84});
    CHECK(reading.diagnostics[0].hint == "did you mean `main`?");
    CHECK(reading.diagnostics[2].hint == "did you mean `width`?");
    CHECK_FALSE(find_opening(reading.design, "door")->sound);
    CHECK_FALSE(find_dome(reading.design, "vault")->sound);
    CHECK(find_dome(reading.design, "drawn")->sound);
}

TEST_CASE("a misspelt header is one fault, not one for each name that leads to it") {
    for (const std::string section : {"course", "dome", "tube"}) {
        CAPTURE(section);
        std::string text = whole_design;
        for (std::size_t at; (at = text.find("[" + section)) != std::string::npos;)
            text.insert(at + 3, "x");
        const DesignReading reading = read_design(text);
        CHECK(codes_of(reading) == "unknown-table");
        CHECK(reading.design.course.sound == (section != "course"));
    }
}

TEST_CASE("what stands on a faulty element is not judged") {
    const Design d =
        read_design(replaced(whole_design, "lay_flat = \"17 in\"", "lay_flat = 0")).design;
    CHECK_FALSE(find_tube(d, "main")->sound);
    CHECK_FALSE(find_dome(d, "vault")->sound);
    CHECK_FALSE(find_opening(d, "door")->sound);
    CHECK_FALSE(find_tunnel(d, "porch")->sound);
    CHECK_FALSE(find_opening(d, "gate")->sound);
    CHECK(find_dome(d, "bath")->sound);
    CHECK(find_opening(d, "fan")->sound);
    CHECK_FALSE(d.joins[0].sound);
    CHECK(d.sleeves[1].sound);
}
