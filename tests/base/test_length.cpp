#include "geometry/base/length.hpp"

#include <catch2/catch.hpp>

#include <clocale>
#include <cmath>
#include <limits>

using namespace coilwright;

TEST_CASE("feet, inches and eighths, as a tape is read") {
    CHECK(feet_and_inches(0) == "0 in");
    CHECK(feet_and_inches(0.1397) == "5-1/2 in");
    CHECK(feet_and_inches(2.6035) == "8 ft 6-1/2 in");
    CHECK(feet_and_inches(2.7432) == "9 ft 0 in");
    CHECK(feet_and_inches(0.0127) == "1/2 in");
    CHECK(feet_and_inches(0.003175) == "1/8 in");
    CHECK(feet_and_inches(0.3048 + 0.003175) == "1 ft 0-1/8 in");
    CHECK(feet_and_inches(-0.1524) == "-6 in");
    CHECK(feet_and_inches(-2.6035) == "-8 ft 6-1/2 in");
    CHECK(feet_and_inches(0.3047999) == "1 ft 0 in"); // rounds up into the foot
}

TEST_CASE("inches round to the denominator asked for, halves away from zero") {
    CHECK(feet_and_inches(0.0254 * 5.3, 1) == "5 in");
    CHECK(feet_and_inches(0.0254 * 5.5, 1) == "6 in");
    CHECK(feet_and_inches(0.0254 * 5.5, 2) == "5-1/2 in");
    CHECK(feet_and_inches(0.0254 * 5.3125, 16) == "5-5/16 in");
    CHECK(feet_and_inches(0.0254 / 16) == "1/8 in");
    CHECK(feet_and_inches(-0.0254 / 16) == "-1/8 in");
    CHECK(feet_and_inches(-0.0254 / 17) == "0 in");
    CHECK(feet_and_inches(0.0254 * 5.75, 4) == "5-3/4 in");
    CHECK(feet_and_inches(0.0254 * 5.25, 16) == "5-1/4 in"); // in lowest terms
}

TEST_CASE(
    "every half of an eighth and of a millimetre goes away from zero, as written, not as held") {
    int below = 0; // halves that the nearest double falls short of
    for (int n = 1; n <= 4001; n += 2) {
        CAPTURE(n);
        const double metres = n * 0.0254 / 16; // an odd sixteenth
        below += metres * 10000 * 8 / 254 < n / 2.0;
        const std::string rounded = feet_and_inches((n + 1) / 2 * 0.0254 / 8);
        CHECK(feet_and_inches(metres) == rounded);
        CHECK(feet_and_inches(-metres) == "-" + rounded);
    }
    CHECK(below > 0);
    for (int n = 0; n < 4000; ++n) {
        CAPTURE(n);
        CHECK(millimetres((n + 0.5) / 1000) == std::to_string(n + 1) + " mm");
    }
}

TEST_CASE("millimetres, whole or with decimals") {
    CHECK(millimetres(2.6035) == "2604 mm");
    CHECK(millimetres(-2.6035) == "-2604 mm");
    CHECK(millimetres(2.6035, 1) == "2603.5 mm");
    CHECK(millimetres(0.0004) == "0 mm");
    CHECK(millimetres(-0.0004) == "0 mm");
    CHECK(millimetres(0.0012345, 3) == "1.235 mm");
}

TEST_CASE("lengths, areas and volumes follow the unit of the design") {
    CHECK(length_text(2.44, DisplayUnit::metres) == "2440 mm");
    CHECK(length_text(2.7432, DisplayUnit::feet) == "9 ft 0 in");
    // 47.124 sq ft is 4.378 m2: the headroom example of a hemisphere of radius 8 ft at 7 ft.
    CHECK(area_text(47.124 * 0.09290304, DisplayUnit::feet) == "47.1 sq ft");
    CHECK(area_text(47.124 * 0.09290304, DisplayUnit::metres) == "4.38 m\u00B2");
    // A cubic foot is 0.028316846592 m3.
    CHECK(volume_text(0.028316846592 * 27, DisplayUnit::feet) == "27.0 cu ft");
    CHECK(volume_text(0.028316846592 * 27, DisplayUnit::metres) == "0.765 m\u00B3");
}

TEST_CASE("a number has a point and its decimals in any locale") {
    const char* german = std::setlocale(LC_ALL, "de_DE.UTF-8"); // not on every machine
    CHECK(fixed_text(1.005, 1) == "1.0");
    CHECK(fixed_text(1234567.25, 2) == "1234567.25");
    CHECK(feet_and_inches(2.6035) == "8 ft 6-1/2 in");
    CHECK(read_length("2.44 m", DisplayUnit::feet).value == 2.44);
    if (german)
        std::setlocale(LC_ALL, "C");
    CHECK(fixed_text(-0.001, 2) == "0.00");
    CHECK(trimmed_text(12.5, 2) == "12.5");
    CHECK(trimmed_text(-0.001, 2) == "0");
    CHECK(trimmed_text(100, 1) == "100");
    CHECK(fixed_text(-0.0, 0) == "0");
    CHECK(fixed_text(-0.01, 2) == "-0.01");
    CHECK(fixed_text(std::numeric_limits<double>::max(), 3).size() == 309 + 4);
}

TEST_CASE("values that no length has are shown, not computed with") {
    CHECK(feet_and_inches(std::numeric_limits<double>::infinity()) == "inf m");
    CHECK(millimetres(1e300).size() > 300);
    CHECK_THAT(feet_and_inches(std::nan("")), Catch::Contains("nan"));
}
