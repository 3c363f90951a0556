// Sources: the inch is 25.4 mm exactly (international yard and pound agreement, 1959); code points
// are those of the Unicode standard. Expected values are decimal literals worked out by hand.
#include "geometry/base/length.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <array>
#include <cmath>
#include <string>
#include <vector>

using namespace coilwright;

namespace {

struct Spelled {
    const char* text;
    double metres;
};

double read(const std::string& text, DisplayUnit bare = DisplayUnit::feet) {
    const LengthReading reading = read_length(text, bare);
    INFO(text << ": " << reading.fault);
    CHECK(reading.fault.empty());
    return reading.value;
}

} // namespace

TEST_CASE("a length reads to the double nearest to its exact decimal value") {
    const std::vector<Spelled> all{
        {"5-1/2 in", 0.1397},
        {"5 1/2 in", 0.1397},
        {"5.5 in", 0.1397},
        {"5 - 1/2 in", 0.1397},
        {"1/2 in", 0.0127},
        {"9/8 in", 0.028575},
        {"8 ft 6 in", 2.5908},
        {"8ft6", 2.5908},
        {"8ft 6in", 2.5908},
        {"8'6\"", 2.5908},
        {"8' 6\"", 2.5908},
        {"8'-6\"", 2.5908},
        {"8' - 6 1/2\"", 2.6035},
        {"8'-6-1/2\"", 2.6035},
        {"8 ft 6-1/2 in", 2.6035},
        {"8 ft, 6 in", 2.5908},
        {"8 ft. 6 in.", 2.5908},
        {"8 feet 6 inches", 2.5908},
        {"1 foot 1 inch", 0.3302},
        {"8.5 ft", 2.5908},
        {"8 1/2 ft", 2.5908},
        {"8'6''", 2.5908},
        {"8'", 2.4384},
        {"9", 2.7432},
        {"8'6", 2.5908},
        {" 9 ft ", 2.7432},
        {"9 FT", 2.7432},
        {"2.44 m", 2.44},
        {"2.44m", 2.44},
        {"244 cm", 2.44},
        {"2440 mm", 2.44},
        {"380 mm", 0.38},
        {"38 cm", 0.38},
        {"2 m 44 cm", 2.44},
        {"2 m 440 mm", 2.44},
        {"2 m 44 cm 5 mm", 2.445},
        {"2 metres", 2.0},
        {"1 meter", 1.0},
        {".5 m", 0.5},
        {"2. m", 2.0},
        {"-6 in", -0.1524},
        {"- 6 in", -0.1524},
        {"-8 ft 6 in", -2.5908},
        {"+6 in", 0.1524},
        {"0 in", 0.0},
        {"0-1/2 in", 0.0127},
        {"8 ft 0-1/2 in", 2.4511},
        {"1/3 in", 0.0254 / 3},
        {"0.1 in", 0.00254},
        {"17 in", 0.4318},
    };
    for (const Spelled& spelled : all) {
        CAPTURE(spelled.text);
        CHECK(read(spelled.text) == spelled.metres);
    }
}

TEST_CASE("a length reads as phones and word processors type it") {
    const std::vector<Spelled> all{
        {"8\u2032 6\u2033", 2.5908}, // primes
        {"8\u2019 6\u201D", 2.5908}, // curly quotes
        {"8\u2018 6\u201C", 2.5908}, // the other curly quotes
        {"5\u00BD in", 0.1397},      // vulgar half
        {"5 \u00BD in", 0.1397},     // with a space
        {"5-\u00BD in", 0.1397},     // with a hyphen
        {"\u00BC in", 0.00635},      // quarter
        {"\u00BE\u2033", 0.01905},   // three quarters
        {"\u215B in", 0.003175},     // eighths
        {"\u215C in", 0.009525},
        {"\u215D in", 0.015875},
        {"\u215E in", 0.022225},
        {"5 1\u20442 in", 0.1397},            // fraction slash
        {"5\u20111/2 in", 0.1397},            // no-break hyphen
        {"5\u20131/2 in", 0.1397},            // en dash
        {"\u22126 in", -0.1524},              // minus sign
        {"\u22126\u00A0in", -0.1524},         // no-break space
        {"8\u202Fft\u20096\u2009in", 2.5908}, // narrow and thin spaces
        {"\u200E8 ft", 2.4384},               // a direction mark pasted along
        {"\uFF18 ft", 2.4384},                // full-width digit
        {"8\tft", 2.4384},
    };
    for (const Spelled& spelled : all) {
        CAPTURE(spelled.text);
        CHECK(read(spelled.text) == spelled.metres);
    }
}

TEST_CASE("a bare number is in the unit of the file") {
    CHECK(read("9", DisplayUnit::feet) == 2.7432);
    CHECK(read("9", DisplayUnit::metres) == 9.0);
    CHECK(read("-0.5", DisplayUnit::metres) == -0.5);
    CHECK(metres_of(9, DisplayUnit::feet) == 2.7432);
    CHECK(metres_of(2.44, DisplayUnit::metres) == 2.44);
}

TEST_CASE("a text that is no length says what is wrong with it") {
    const std::vector<std::array<const char*, 2>> all{
        {"", "is empty"},
        {"   ", "is empty"},
        {"ft", "has no number"},
        {"in 5", "has no number"},
        {"five in", "has no number"},
        {"9 inn", "unknown unit \"inn\""},
        {"10 km", "unknown unit \"km\""},
        {"3 yd", "unknown unit \"yd\""},
        {"1e3 ft", "unknown unit \"e\""},
        {"8 ft 6 ft", "one unit twice"},
        {"6 in 8 ft", "smaller unit before"},
        {"2 m 6 in", "mixes"},
        {"8 ft 6 cm", "mixes"},
        {"8.5 ft 6 in", "fraction in a part"},
        {"8 1/2 ft 6 in", "fraction in a part"},
        {"8 ft 14 in", "makes up one or more"},
        {"2 m 100 cm", "makes up one or more"},
        {"5 1/0 in", "divides by 0"},
        {"1/ in", "lower number"},
        {"5.5 1/2 in", "fraction after a decimal"},
        {"5 9/8 in", "fraction of 1 or more"},
        {"2,44 m", "comma within a number"},
        {"1,500 ft", "comma within a number"},
        {". m", "point without digits"},
        {"5 6 in", "character that no length has"},
        {"8 ft -", "ends in a separator"},
        {"8 ft,", "ends in a separator"},
        {"8-6", "without its unit"},
        {"6 in 3", "without its unit"},
        {"2 m 44", "without its unit"},
        {"9 ft;", "no number"},
        {"--6 in", "no number"},
        {"nan", "no number"},
        {"inf ft", "no number"},
        {"0x10 in", "unknown unit \"x\""},
        {"99999999999 ft", "over 10 km"},
        {"10001 m", "over 10 km"},
        {"5 \U0001F600", "character that no length has"},
        {"\xFF\xFE", "no number"},
    };
    for (const auto& [text, part] : all) {
        CAPTURE(text);
        const LengthReading reading = read_length(text, DisplayUnit::feet);
        CHECK(reading.value == 0);
        CHECK_THAT(reading.fault, Catch::Contains(part));
    }
    CHECK(read_length(std::string(1 << 20, '9'), DisplayUnit::feet).fault == "is too long");
}

TEST_CASE("an area reads in square feet and square metres") {
    // 1 sq ft = 0.3048^2 m2 = 0.09290304 m2 exactly.
    CHECK(read_area("1 sq ft", DisplayUnit::metres).value == 0.09290304);
    for (const char* text : {"120 sq ft", "120 ft2", "120 ft\u00B2", "120ft^2", "120 sq. ft.",
                             "120 square feet", "120 sqft", "120 sf", "120"}) {
        CAPTURE(text);
        const LengthReading reading = read_area(text, DisplayUnit::feet);
        CHECK(reading.fault.empty());
        CHECK(reading.value == Approx(11.1483648).epsilon(1e-15));
    }
    for (const char* text : {"11 m2", "11 m\u00B2", "11 sq m", "11 square metres", "11"})
        CHECK(read_area(text, DisplayUnit::metres).value == 11.0);
    for (const char* text : {"", "11 acres", "sq ft", "1/0 m2", "11 ft", "1e30 m2"}) {
        CAPTURE(text);
        CHECK_FALSE(read_area(text, DisplayUnit::feet).fault.empty());
    }
}

TEST_CASE("lengths survive the way through text") {
    constexpr std::uint64_t seed = 20240607;
    CAPTURE(seed);
    Seeded random(seed);
    for (int i = 0; i < 20000; ++i) {
        const double metres = random.between(-30, 30);
        CAPTURE(metres);
        // To the nearest eighth of an inch is within a sixteenth; to the millimetre within half.
        const std::string feet = feet_and_inches(metres);
        REQUIRE(std::abs(read(feet) - metres) <= 0.0254 / 16 + 1e-9);
        REQUIRE(std::abs(read(millimetres(metres)) - metres) <= 0.0005 + 1e-9);
        // What was rounded once stays as it is.
        REQUIRE(feet_and_inches(read(feet)) == feet);
        // Every sixteenth of an inch comes back to the same double.
        const double sixteenths = random.whole(-20000, 20000) * 254.0 / 160000.0;
        REQUIRE(read(feet_and_inches(sixteenths, 16)) == sixteenths);
    }
}

TEST_CASE("random texts are read or refused, never more") {
    constexpr std::uint64_t seed = 7;
    CAPTURE(seed);
    Seeded random(seed);
    const std::vector<std::string> pieces{"8",  "6",      "1/2", " ",      "-", "ft", "in", "'",
                                          "\"", "\u00BD", ".",   "\u2032", "m", "mm", ",",  "\xC2"};
    int read_count = 0;
    for (int i = 0; i < 20000; ++i) {
        std::string text;
        for (int n = random.whole(0, 7); n > 0; --n)
            text += random.one_of(pieces);
        CAPTURE(text);
        const LengthReading reading = read_length(text, DisplayUnit::feet);
        REQUIRE(std::isfinite(reading.value));
        if (!reading.fault.empty()) {
            REQUIRE(reading.value == 0);
            continue;
        }
        ++read_count;
        REQUIRE(std::abs(reading.value) <= 10000);
    }
    CHECK(read_count > 500); // the texts are not all refused
}
