// Numbers that were meant in inches, centimetres or millimetres, and those that were not.
#include "tests/design/whole_design.hpp"

#include "geometry/design/forgotten_unit.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

// A small design; its lengths as a person types them, with one replaced.
std::string design_in(const std::string& unit, const std::string& key, const std::string& value) {
    const bool feet = unit == "ft";
    const auto line = [&](const std::string& name, const char* in_feet, const char* in_metres) {
        return name + " = " + (key == name ? value : feet ? in_feet : in_metres) + "\n";
    };
    return "coilwright = 1\nname = \"Shed\"\nunit = \"" + unit + "\"\n[course]\n" +
           line("end_allowance", "\"8 in\"", "0.2") + line("longest_tube", "30", "9") +
           "height = " + (feet ? "\"5 in\"" : "0.12") + "\n[tube.main]\n" +
           line("lay_flat", "\"17 in\"", "0.43") + line("roll", "1500", "500") +
           "[dome.vault]\nat = [0, 0]\n" + line("inside_diameter", "9", "2.75") +
           line("springline", "1.75", "0.5") + "profile = { kind = \"pointed\", " +
           (key == "rise" ? "rise = " + value : "rise_to_span = 1") +
           " }\ntube = \"main\"\n[opening.door]\nin = \"vault\"\nuse = \"door\"\nbearing = 90\n" +
           line("width", "2.6", "0.8") + line("sill", "0", "0") + line("height", "6.5", "2") +
           "[finish]\n" + line("inside_plaster", "0.125", "0.03") + "[ground]\n" +
           line("level", "-0.5", "-0.15");
}

} // namespace

TEST_CASE("a bare number that is absurd in the file's unit is told with the unit that was meant") {
    struct Typed {
        const char* unit;
        const char* key;
        const char* value;
        const char* code;
        const char* meant;
    };
    for (const Typed& typed : {
             Typed{"ft", "width", "32", "out-of-range", "32 in"},
             Typed{"ft", "width", "800", "out-of-range", "800 mm"},
             Typed{"ft", "height", "80", "out-of-range", "80 in"},
             Typed{"ft", "sill", "35", "forgotten-unit", "35 in"},
             Typed{"ft", "springline", "20", "forgotten-unit", "20 in"},
             Typed{"ft", "springline", "\"20\"", "forgotten-unit", "20 in"},
             Typed{"ft", "width", "\" 32 \"", "out-of-range", "32 in"},
             Typed{"ft", "inside_diameter", "108", "out-of-range", "108 in"},
             Typed{"ft", "inside_diameter", "96", "forgotten-unit", "96 in"},
             Typed{"ft", "rise", "108", "forgotten-unit", "108 in"},
             Typed{"ft", "lay_flat", "17", "out-of-range", "17 in"},
             Typed{"ft", "end_allowance", "8", "out-of-range", "8 in"},
             Typed{"ft", "inside_plaster", "1.5", "out-of-range", "1.5 in"},
             Typed{"ft", "level", "-6", "forgotten-unit", "-6 in"},
             Typed{"ft", "longest_tube", "360", "forgotten-unit", "360 in"},
             Typed{"m", "width", "80", "out-of-range", "80 cm"},
             Typed{"m", "width", "800", "out-of-range", "800 mm"},
             Typed{"m", "lay_flat", "43", "out-of-range", "43 cm"},
             Typed{"m", "lay_flat", "430", "out-of-range", "430 mm"},
             Typed{"m", "inside_diameter", "275", "out-of-range", "275 cm"},
             Typed{"m", "springline", "50", "out-of-range", "50 cm"},
             Typed{"m", "level", "-15", "out-of-range", "-15 cm"},
         }) {
        CAPTURE(typed.unit, typed.key, typed.value);
        const DesignReading reading = read_design(design_in(typed.unit, typed.key, typed.value));
        REQUIRE(codes_of(reading) == typed.code);
        const Diagnostic& found = reading.diagnostics.front();
        const std::string text = '"' + std::string(typed.meant) + '"';
        CHECK(found.example == std::string(typed.key) + " = " + text);
        CHECK(codes_of(read_design(design_in(typed.unit, typed.key, text))) == "");
        if (found.code == "out-of-range")
            CHECK_THAT(found.hint, Catch::Contains(typed.meant));
    }
}

TEST_CASE("the greater number is taken with its unit") {
    const DesignReading bare = read_design(design_in("ft", "springline", "20"));
    REQUIRE(codes_of(bare) == "forgotten-unit");
    CHECK_THAT(bare.diagnostics.front().message, Catch::Contains("20 ft 0 in"));
    CHECK_THAT(bare.diagnostics.front().hint, Catch::Contains("\"20 ft 0 in\""));
    CHECK(codes_of(read_design(design_in("ft", "springline", "\"20 ft 0 in\""))) == "");
}

TEST_CASE("bare numbers that may well be meant are taken") {
    CHECK(codes_of(read_design(design_in("ft", "", ""))) == "");
    CHECK(codes_of(read_design(design_in("m", "", ""))) == "");
    // The greatest that no one asks about, and where no smaller unit would make sense.
    CHECK(codes_of(read_design(design_in("ft", "springline", "13"))) == "");
    CHECK(codes_of(read_design(design_in("ft", "inside_diameter", "39"))) == "");
    CHECK(codes_of(read_design(design_in("m", "inside_diameter", "14"))) == "");
    CHECK(codes_of(read_design(design_in("m", "springline", "5"))) == "");
    CHECK(codes_of(read_design(design_in("ft", "roll", "5000"))) == "");
    // Far sites are far.
    CHECK(codes_of(read_design(replaced(design_in("ft", "", ""), "[0, 0]", "[240, 900]"))) == "");
}

TEST_CASE("a coordinate that is out of range keeps an example of two") {
    const DesignReading reading =
        read_design(replaced(design_in("m", "", ""), "[0, 0]", "[20000, 0]"));
    REQUIRE(codes_of(reading) == "out-of-range");
    CHECK_THAT(reading.diagnostics.front().example, Catch::Contains("[\""));
    CHECK_THAT(reading.diagnostics.front().hint, Catch::Contains("20000 mm"));
}

TEST_CASE("the unit that was forgotten is the one that makes an ordinary length") {
    const UsualLength door{0.05, 4, 0.8128};
    CHECK(with_forgotten_unit(32, door, DisplayUnit::feet) == "32 in");
    CHECK(with_forgotten_unit(800, door, DisplayUnit::feet) == "800 mm");
    CHECK(with_forgotten_unit(80, door, DisplayUnit::metres) == "80 cm");
    CHECK(with_forgotten_unit(300, door, DisplayUnit::metres) == "300 mm"); // 3 m is farther off
    CHECK(with_forgotten_unit(82.5, door, DisplayUnit::metres) == "82.5 cm");
    CHECK(with_forgotten_unit(4001, door, DisplayUnit::metres).empty());
    CHECK(with_forgotten_unit(9, door, DisplayUnit::metres).empty()); // 9 cm: no door
    CHECK(with_forgotten_unit(-30, {-5, 5, 0.889}, DisplayUnit::feet) == "-30 in");
}
