// International Residential Code, 2018 and 2021: R303.1 (8 % light, 4 % air; from memory), R304.1
// (70 sq ft).
#include "geometry/checks/rooms.hpp"
#include "geometry/checks/use_findings.hpp"
#include "geometry/plan/clear_outline.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding of_room(const std::string& design, const std::string& code) {
    return the(room_findings(laid(design)), code);
}
// Of the room: 14 ft less twice 1-1/2 in of plaster.
const double floor_area = pi * std::pow(82.5 * inch, 2);

} // namespace

TEST_CASE("light is the clear area of windows against 8 % of the floor") {
    const Finding dark = of_room(room_design, "room-light");
    CHECK(dark.value.value() == Approx(30 * 34 * inch * inch)); // 36 by 40 less 3 in on each side
    CHECK(dark.limit.value() == Approx(0.08 * floor_area));
    CHECK(dark.verdict == Verdict::fails);
    const double missing = (dark.limit.value() - dark.value.value()) / (inch * inch);
    REQUIRE(missing > 0);
    // Just as much as is missing in another window, a little less, a little more.
    for (const double off : {-0.2, 0.0, 0.2}) {
        CAPTURE(off);
        const double width = missing / 30 + 6 + off;
        const Finding found =
            of_room(room_design +
                        "[opening.more]\nin = \"room\"\nbearing = 270\nsill = \"30 in\"\n"
                        "height = \"36 in\"\nwidth = \"" +
                        std::to_string(width + (off == 0 ? 1e-4 : 0)) + " in\"\n",
                    "room-light");
        CHECK((found.verdict == Verdict::holds) == (off >= 0));
    }
}

TEST_CASE("the skylight that is offered gives the light that is missing") {
    const Finding dark = of_room(room_design, "room-light");
    const std::string sky = with(room_design, "tube = \"main\"\n",
                                 "tube = \"main\"\ntop = { kind = \"skylight\", diameter = \"" +
                                     taken(dark, "A skylight of (.*) in 'room'") + "\" }\n");
    CHECK(of_room(sky, "room-light").verdict == Verdict::holds);
}

TEST_CASE("air is what opens against 4 % of the floor") {
    const Finding airy = of_room(room_design, "room-air"); // door and window
    CHECK(airy.verdict == Verdict::holds);
    CHECK(airy.value.value() == Approx((30 * 34 + 32 * 82) * inch * inch));
    // A hatch alone for a door, and no window.
    const double least = 0.04 * floor_area / (inch * inch);
    const std::string closed = room_design.substr(0, room_design.find("[opening.win]")) +
                               room_design.substr(room_design.find("[finish]"));
    for (const double off : {-0.05, 0.0, 0.05}) {
        CAPTURE(off);
        const std::string hatch =
            with(closed, "width = \"38 in\"\nsill = 0\nheight = \"85 in\"",
                 "width = \"" + std::to_string(least / 37 + 6 + off + (off == 0 ? 1e-4 : 0)) +
                     " in\"\nsill = 0\nheight = \"40 in\"");
        const Finding found = of_room(hatch, "room-air");
        CHECK((found.verdict == Verdict::holds) == (off >= 0));
        if (found.verdict == Verdict::holds)
            continue;
        const std::string side = taken(found, "of (.*) by");
        CHECK(of_room(hatch +
                          "[opening.more]\nin = \"room\"\nbearing = 90\nuse = \"vent\"\n"
                          "sill = \"30 in\"\nheight = \"" +
                          side + "\"\nwidth = \"" + side + "\"\n",
                      "room-air")
                  .verdict == Verdict::holds);
    }
}

TEST_CASE("an open plan of two small domes is a room of the area of both") {
    const auto two = [](const std::string& across, const std::string& apart) {
        std::string text =
            with(with(room_design, "\"14 ft\"", "\"" + across + "\""), "\"38 in\"", "\"28 in\"");
        text = with(text, "width = \"36 in\"", "width = \"20 in\"");
        text = with(text, "bearing = 90", "bearing = 0");
        return text + "[dome.nook]\nat = [\"" + apart +
               "\", 0]\nuse = \"habitable\"\ninside_diameter = \"" + across +
               "\"\nspringline = \"50 in\"\nprofile = { kind = \"pointed\", rise = \"14 ft\" }\n"
               "tube = \"main\"\n[join.both]\nbetween = [\"room\", \"nook\"]\nkeep = \"neither\"\n";
    };
    const Finding large = of_room(two("8 ft", "6 ft"), "room-area");
    CHECK(large.verdict == Verdict::holds); // neither dome has 70 sq ft
    const Finding small = of_room(two("6 ft 8 in", "5 ft"), "room-area");
    CHECK(small.verdict == Verdict::fails);
    CHECK(small.limit.value() == Approx(70 * square_foot));
    CHECK_FALSE(has(room_findings(laid(room_design)), "room-area")); // headroom says it of one dome
}

TEST_CASE("a bath has no demand of light, and a niche or a door inward gives none") {
    CHECK(room_findings(laid(with(room_design, "\"habitable\"", "\"bath\""))).empty());
    const double before = *of_room(room_design, "room-light").value;
    const std::string niche = room_design + "[opening.shelf]\nin = \"room\"\nuse = \"niche\"\n"
                                            "bearing = 270\nsill = \"30 in\"\nheight = \"20 in\"\n"
                                            "width = \"20 in\"\ndepth = \"8 in\"\n";
    CHECK(*of_room(niche, "room-light").value == Approx(before));
}
