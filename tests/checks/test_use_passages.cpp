// R311.3.1 (7-3/4 in, from memory); R105.2 (200 sq ft); the others are practice and judgements.
#include "geometry/checks/use_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding passage(const std::string& design, const std::string& code) {
    return the(passage_findings(laid(design)), code);
}
std::string on_ground(const std::string& level) {
    return with(room_design, "level = \"-6 in\"", "level = \"" + level + "\"");
}

} // namespace

TEST_CASE("one step to the door: 7-3/4 in at most") {
    CHECK(passage(on_ground("-7.75 in"), "door-step").verdict == Verdict::holds);
    CHECK(passage(on_ground("-7.7 in"), "door-step").verdict == Verdict::holds);
    const Finding high = passage(on_ground("-7.8 in"), "door-step");
    CHECK(high.verdict == Verdict::advice);
    CHECK(high.value.value() == Approx(7.8 * inch));
    CHECK(high.subject == "opening.door");
    CHECK(passage(on_ground(taken(high, "up to (.*) against")), "door-step").verdict ==
          Verdict::holds);
}

TEST_CASE("window sills stand clear of splashing rain") {
    CHECK(passage(on_ground("29 in"), "sill-near-ground").verdict == Verdict::holds); // 35 less 6
    CHECK(passage(on_ground("28.9 in"), "sill-near-ground").verdict == Verdict::holds);
    const Finding low = passage(on_ground("29.1 in"), "sill-near-ground");
    CHECK(low.verdict == Verdict::advice);
    const std::string raised = with(on_ground("29.1 in"), "sill = \"35 in\"",
                                    "sill = \"" + taken(low, "sill at (.*) or") + "\"");
    CHECK(passage(raised, "sill-near-ground").verdict == Verdict::holds);
}

TEST_CASE("a tunnel's head after plaster") {
    const auto porch = [](const std::string& springline) {
        return room_design +
               "[tunnel.porch]\nfrom = \"room\"\nbearing = 270\nwidth = \"40 in\"\n"
               "springline = \"" +
               springline +
               "\"\nprofile = { kind = \"round\" }\nreach = \"13 ft\"\ntube = \"main\"\n";
    };
    // Crown at springline + 20 in, less 1-1/2 in: 78 in at 59-1/2 in.
    CHECK(passage(porch("59.5 in"), "tunnel-headroom").verdict == Verdict::holds);
    CHECK(passage(porch("59.6 in"), "tunnel-headroom").verdict == Verdict::holds);
    const Finding low = passage(porch("59.4 in"), "tunnel-headroom");
    CHECK(low.verdict == Verdict::advice);
    CHECK(low.value.value() == Approx(77.9 * inch));
    CHECK(passage(porch(taken(low, "springline to (.*)\\.")), "tunnel-headroom").verdict ==
          Verdict::holds);
}

TEST_CASE("floor that needs no permit: both areas are told, the outside one is held against") {
    const auto shed = [](const std::string& across) {
        return the(permit_findings(laid(with(with(room_design, "\"habitable\"", "\"store\""),
                                             "inside_diameter = \"14 ft\"",
                                             "inside_diameter = \"" + across + "\""))),
                   "permit-area");
    };
    const double w = stadium_width(20 * inch, 5 * inch) + 2 * inch; // wall and plaster
    const double at = 2 * (std::sqrt(200 * square_foot / pi) - w) / inch;
    const auto text = [](double inches) { return std::to_string(inches) + " in"; };
    CHECK(shed(text(at - 0.01)).verdict == Verdict::holds);
    CHECK(shed(text(at - 2)).verdict == Verdict::holds);
    const Finding large = shed(text(at + 0.1));
    CHECK(large.verdict == Verdict::advice);
    CHECK(large.value.value() == Approx(200 * square_foot).epsilon(0.002));
    CHECK_THAT(large.message,
               Catch::Contains("by the inside") && Catch::Contains("by the outside"));
    CHECK(shed(taken(large, "at most (.*) inside")).verdict == Verdict::holds);
    // People live in the room: whatever its floor, it is not for this rule.
    CHECK(the(permit_findings(laid(room_design)), "permit-area").verdict == Verdict::not_judged);
}

TEST_CASE("a tunnel and a second dome add their floor to the building's") {
    const std::string shed = with(room_design, "\"habitable\"", "\"store\"");
    const double alone = *the(permit_findings(laid(shed)), "permit-area").value;
    const std::string porch = "[tunnel.porch]\nfrom = \"room\"\nbearing = 270\nwidth = \"40 in\"\n"
                              "springline = \"60 in\"\nprofile = { kind = \"round\" }\n"
                              "reach = \"13 ft\"\ntube = \"main\"\n";
    const double w = stadium_width(20 * inch, 5 * inch);
    const double more = *the(permit_findings(laid(shed + porch)), "permit-area").value - alone;
    CHECK(more ==
          Approx((40 * inch + 2 * w + 4 * inch) * (13 * foot - 7 * foot - w)).epsilon(0.01));
}
