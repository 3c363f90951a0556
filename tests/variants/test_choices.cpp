// Choices as people write them on a command line.
#include "geometry/variants/choices.hpp"

#include "tests/support/files.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using Catch::Matchers::Contains;

namespace {

Design store() {
    return read_design(testing::whole_building_text("grain-store")).design;
}

std::vector<std::string> labels(const std::string& text) {
    const ChoiceReading reading = read_choice(text, store());
    CAPTURE(text);
    CHECK(reading.fault == "");
    std::vector<std::string> all;
    for (const ChoiceValue& value : reading.choice.values)
        all.push_back(value.label);
    return all;
}

using Words = std::vector<std::string>;

} // namespace

TEST_CASE("lists and ranges of lengths, numbers and words") {
    CHECK(labels("diameter=8 ft, 9 ft,10 ft") == Words{"8 ft", "9 ft", "10 ft"});
    CHECK(labels("diameter=8 ft to 9 ft by 6 in") == Words{"8 ft 0 in", "8 ft 6 in", "9 ft 0 in"});
    CHECK(labels("rise=2.4 m to 2.6 m by 10 cm").size() == 3);
    CHECK(labels("dome.store.profile.kind=pointed,catenary") == Words{"pointed", "catenary"});
    CHECK(labels("opening.door.bearing=0 to 90 by 30") == Words{"0", "30", "60", "90"});
    CHECK(labels("diameter=9 ft,9 ft") == Words{"9 ft"});
    // A step that does not end on the last value stops before it.
    CHECK(labels("diameter=8 ft to 9 ft by 7 in") == Words{"8 ft 0 in", "8 ft 7 in"});
    // What eighths of an inch cannot say is said in metres.
    CHECK(labels("lay-flat=1 in to 1-1/32 in by 1/32 in") == Words{"1 in", "0.02619375 m"});
}

TEST_CASE("numbers of a choice are metres, of words their places") {
    const Choice lengths = read_choice("diameter=8 ft,9 ft", store()).choice;
    CHECK(lengths.numeric);
    CHECK(lengths.values[1].number == Approx(9 * 0.3048));
    const Choice words = read_choice("dome.store.profile.kind=pointed,catenary", store()).choice;
    CHECK_FALSE(words.numeric);
    CHECK(words.values[1].number == 2);
}

TEST_CASE("short names stand for the only dome's and the only tube's keys") {
    const auto change = [](const std::string& text) {
        return read_choice(text, store()).choice.values.at(0).changes;
    };
    CHECK(change("diameter=9 ft")[0].path == "dome.store.inside_diameter");
    CHECK(change("springline=9 in")[0].path == "dome.store.springline");
    CHECK(change("rise=9 ft")[0].path == "dome.store.profile.rise");
    CHECK(change("course=5 in")[0].path == "course.height");
    // A measured width is of the tube that was measured.
    const auto lay_flat = change("lay-flat=19 in");
    REQUIRE(lay_flat.size() == 2);
    CHECK(lay_flat[1].path == "tube.main.tamped_width");
    CHECK(lay_flat[1].take_out);
    CHECK(change("lay-flat=17 in").size() == 1); // this is that tube
    const Design home = read_design(testing::whole_building_text("home")).design;
    CHECK_THAT(read_choice("diameter=9 ft", home).fault,
               Contains("dome.hall.inside_diameter") && Contains("dome.bath.inside_diameter"));
}

TEST_CASE("what is no choice is told") {
    const auto fault = [](const std::string& text) { return read_choice(text, store()).fault; };
    CHECK_THAT(fault("diameter"), Contains("KEY=VALUES"));
    CHECK_THAT(fault("=8 ft"), Contains("KEY=VALUES"));
    CHECK_THAT(fault("diametre=8 ft"), Contains("did you mean diameter?"));
    CHECK_THAT(fault("diameter=8 ft,,9 ft"), Contains("empty"));
    CHECK_THAT(fault("diameter=8 ft to 9 ft"), Contains("step"));
    CHECK_THAT(fault("diameter=8 ft to 9 fee by 1 in"), Contains("\"9 fee\""));
    CHECK_THAT(fault("diameter=9 ft to 8 ft by 1 in"), Contains("goes up"));
    CHECK_THAT(fault("diameter=8 ft to 9 ft by 0 in"), Contains("goes up"));
    CHECK_THAT(fault("diameter=0 ft to 9 ft by 0.001 in"), Contains("10,000"));
}
