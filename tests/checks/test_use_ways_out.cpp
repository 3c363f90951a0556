// Values: International Residential Code, 2018 and 2021, R311.2 (32 by 78 in) and R310.2 (5.7 sq
// ft, 5.0 at grade, 24 in high, 20 in wide, sill 44 in).
#include "geometry/checks/use_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding egress(const std::string& design) {
    return the(way_out_findings(laid(design)), "egress-door");
}
Finding escape(const std::string& design, const std::string& subject = {}) {
    return the(way_out_findings(laid(design)), "escape-opening", subject);
}
const std::string door_size = "width = \"38 in\"\nsill = 0\nheight = \"85 in\"";
std::string door(const std::string& width, const std::string& height) {
    return with(room_design, door_size,
                "width = \"" + width + "\"\nsill = 0\nheight = \"" + height + "\"");
}
// A room whose door is a vent, no way to escape by, so that the window is judged.
const std::string window_size = "width = \"36 in\"\nsill = \"35 in\"\nheight = \"40 in\"";
std::string window(const std::string& width, const std::string& sill, const std::string& height) {
    return with(with(room_design, "use = \"door\"", "use = \"vent\""), window_size,
                "width = \"" + width + "\"\nsill = \"" + sill + "\"\nheight = \"" + height + "\"");
}

} // namespace

TEST_CASE("a door is a way out with 32 in clear between plaster and frame, and not with less") {
    const Finding at = egress(room_design); // 38 less twice 1-1/2 of plaster and 1-1/2 of frame
    CHECK(at.verdict == Verdict::holds);
    CHECK(at.limit.value() == Approx(78 * inch));
    CHECK(at.value.value() == Approx(82 * inch)); // 85 less 3
    CHECK(at.subject == "dome.room");
    CHECK_THAT(at.source, Catch::Contains("R311.2"));
    CHECK(egress(door("38.1 in", "85 in")).verdict == Verdict::holds);
    const Finding under = egress(door("37.9 in", "85 in"));
    CHECK(under.verdict == Verdict::fails);
    CHECK(under.value.value() == Approx(31.9 * inch));
    CHECK(under.limit.value() == Approx(32 * inch));
    CHECK(egress(door(taken(under, "Make 'door' (.*) by (.*), rough"),
                      taken(under, "Make 'door' (.*) by (.*), rough", 2)))
              .verdict == Verdict::holds);
}

TEST_CASE("a door is a way out with 78 in of height, and not with less") {
    CHECK(egress(door("38 in", "81 in")).verdict == Verdict::holds);
    CHECK(egress(door("38 in", "81.1 in")).verdict == Verdict::holds);
    const Finding under = egress(door("38 in", "80.9 in"));
    CHECK(under.verdict == Verdict::fails);
    CHECK(under.value.value() == Approx(77.9 * inch));
    CHECK(egress(door(taken(under, "Make 'door' (.*) by (.*), rough"),
                      taken(under, "Make 'door' (.*) by (.*), rough", 2)))
              .verdict == Verdict::holds);
}

TEST_CASE("under a pointed head the height counts at which 32 in still fit") {
    const std::string pointed = with(door("44 in", "95 in"), "head = { kind = \"square\" }",
                                     "head = { kind = \"pointed\", rise = \"30 in\" }");
    const Finding found = egress(pointed);
    CHECK(found.verdict == Verdict::fails);
    // Two circles of radius (22^2 + 30^2) / 44 less 3 in: 16 in from the middle.
    const double rho = (22.0 * 22 + 30.0 * 30) / (2 * 22), off = rho - 22;
    const double over = std::sqrt((rho - 3) * (rho - 3) - (16 + off) * (16 + off));
    CHECK(found.value.value() == Approx((65 + over) * inch).epsilon(1e-6));
    const std::string better = with(
        with(pointed, "\"44 in\"", "\"" + taken(found, "Make 'door' (.*) by (.*), rough") + "\""),
        "\"95 in\"", "\"" + taken(found, "Make 'door' (.*) by (.*), rough", 2) + "\"");
    CHECK(egress(better).verdict == Verdict::holds);
}

TEST_CASE("a building without a door fails, a store needs none") {
    const std::string no_door = with(room_design, "use = \"door\"\n", "");
    CHECK(egress(no_door).verdict == Verdict::fails);
    const auto store = way_out_findings(laid(with(room_design, "\"habitable\"", "\"store\"")));
    CHECK(store.empty());
}

TEST_CASE("a window to escape by: area at grade and above") {
    // Clear 30 in by 24: 5.0 sq ft exactly; its sill at 35 in lies 41 in over the ground: at grade.
    CHECK(escape(window("36 in", "35 in", "30 in")).verdict == Verdict::holds);
    CHECK(escape(window("36 in", "35 in", "30 in")).limit.value() == Approx(5 * square_foot));
    CHECK(escape(window("36.2 in", "35 in", "30 in")).verdict == Verdict::holds);
    CHECK(escape(window("35.8 in", "35 in", "30 in")).verdict == Verdict::fails);
    // The same with the ground 10 in lower: 5.7 sq ft are needed, 34.2 in by 24.
    const auto high = [](const std::string& width) {
        return with(window(width, "35 in", "30 in"), "level = \"-6 in\"", "level = \"-10 in\"");
    };
    CHECK(escape(high("40.2 in")).verdict == Verdict::holds);
    CHECK(escape(high("40.1 in")).verdict == Verdict::fails);
    CHECK(escape(high("40.1 in")).limit.value() == Approx(5.7 * square_foot));
}

TEST_CASE("a window to escape by: least height, width and sill") {
    CHECK(escape(window("50 in", "35 in", "30 in")).verdict == Verdict::holds);
    CHECK(escape(window("50 in", "35 in", "29.9 in")).verdict == Verdict::fails);
    CHECK(escape(window("26 in", "25 in", "55 in")).verdict == Verdict::holds); // 20 by 49
    CHECK(escape(window("25.9 in", "25 in", "55 in")).verdict == Verdict::fails);
    CHECK(escape(window("40 in", "41 in", "40 in")).verdict == Verdict::holds); // 44 in clear
    const Finding high = escape(window("40 in", "41.1 in", "40 in"));
    CHECK(high.verdict == Verdict::fails);
    CHECK(high.unit == FindingUnit::metre);
    CHECK(high.value.value() == Approx(44.1 * inch));
    CHECK(high.limit.value() == Approx(44 * inch));
}

TEST_CASE("what is said of a window that is too small or too high to escape by works") {
    const std::vector<std::vector<std::string>> windows{
        {"24 in", "35 in", "30 in"}, {"40 in", "45 in", "35 in"}, {"30 in", "45 in", "25 in"}};
    for (const auto& size : windows) {
        CAPTURE(size[0], size[1], size[2]);
        const Finding found = escape(window(size[0], size[1], size[2]));
        REQUIRE(found.verdict == Verdict::fails);
        const std::string pattern = "Make 'win' (.*) by (.*), rough, from a sill at (.*)\\.";
        CHECK(escape(window(taken(found, pattern, 1), taken(found, pattern, 3),
                            taken(found, pattern, 2)))
                  .verdict == Verdict::holds);
    }
}

TEST_CASE("domes in open plan are one room with one escape and one way out") {
    const std::string two = room_design + R"([dome.nook]
at = ["11 ft", 0]
use = "habitable"
inside_diameter = "12 ft"
springline = "50 in"
profile = { kind = "pointed", rise = "12 ft" }
tube = "main"
[join.both]
between = ["room", "nook"]
keep = "neither"
)";
    const std::string turned = with(two, "bearing = 90", "bearing = 0");
    CHECK(way_out_findings(laid(turned)).size() == 2);
    CHECK(escape(turned).subject == "dome.nook + dome.room");
    // With a wall between they are two rooms; the nook has no window.
    const auto apart = way_out_findings(laid(with(turned, "\"neither\"", "\"room\"")));
    CHECK(the(apart, "escape-opening", "dome.room").verdict == Verdict::holds);
    const Finding nook = the(apart, "escape-opening", "dome.nook");
    CHECK(nook.verdict == Verdict::fails);
    CHECK_THAT(nook.remedy, Catch::Contains("sq ft"));
    CHECK(the(apart, "egress-door").subject == "dome.nook + dome.room");
}

TEST_CASE("a rule of the design's own is the one that is held against, and is named") {
    const Finding found =
        egress(door("34 in", "85 in") + "[rules.egress-door]\nclear_width = \"28 in\"\n");
    CHECK(found.verdict == Verdict::holds); // 28 in clear
    const Finding narrow =
        egress(door("33.9 in", "85 in") + "[rules.egress-door]\nclear_width = \"28 in\"\n");
    CHECK(narrow.verdict == Verdict::fails);
    CHECK(narrow.source == "stated in the design, [rules.egress-door]");
}

TEST_CASE("a tunnel with an open end is a way out by its plaster alone") {
    const auto porch = [](const std::string& width, const std::string& springline) {
        return with(room_design, "use = \"door\"\n", "") +
               "[tunnel.porch]\nfrom = \"room\"\nbearing = 270\nwidth = \"" + width +
               "\"\nspringline = \"" + springline +
               "\"\nprofile = { kind = \"pointed\" , rise = \"36 in\" }\nreach = \"13 ft\"\n"
               "tube = \"main\"\n";
    };
    CHECK(egress(porch("35 in", "78 in")).verdict == Verdict::holds); // 32 in up to the springline
    CHECK(egress(porch("35 in", "77.9 in")).verdict == Verdict::fails);
    CHECK(egress(porch("34.9 in", "78 in")).verdict == Verdict::fails);
    const Finding low = egress(porch("36 in", "60 in"));
    CHECK(low.verdict == Verdict::fails);
    const std::string pattern = "'porch' (.*) wide with its springline at (.*)\\.";
    CHECK(egress(porch(taken(low, pattern), taken(low, pattern, 2))).verdict == Verdict::holds);
}

TEST_CASE("a door in a tunnel's end wall that cannot grow gets a wider tunnel") {
    const auto porch = [](const std::string& tunnel, const std::string& width,
                          const std::string& height) {
        return with(with(with(room_design, "in = \"room\"\nuse", "in = \"porch\"\nuse"),
                         "bearing = 180\nwidth = \"38 in\"", "width = \"" + width + "\""),
                    "height = \"85 in\"", "height = \"" + height + "\"") +
               "[tunnel.porch]\nfrom = \"room\"\nbearing = 180\nwidth = \"" + tunnel +
               "\"\nspringline = \"80 in\"\nprofile = { kind = \"pointed\", rise = \"42 in\" }\n"
               "reach = \"14 ft\"\nend = \"wall\"\ntube = \"main\"\n";
    };
    const auto moved = [](std::string text) {
        return with(text, "datum = \"door\"", "datum = \"porch\"");
    };
    const Finding narrow = egress(moved(porch("48 in", "28 in", "75 in")));
    REQUIRE(narrow.verdict == Verdict::fails);
    const std::string pattern = "Make 'door' (.*) by (.*), rough, in a tunnel (.*) wide";
    CHECK(egress(moved(porch(taken(narrow, pattern, 3), taken(narrow, pattern),
                             taken(narrow, pattern, 2))))
              .verdict == Verdict::holds);
}
