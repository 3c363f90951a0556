// Up to at least 18 in above the springline: common practice, no source.
#include "geometry/checks/trade_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding braced(const std::string& design) {
    return the(buttress_practice_findings(laid(design)), "buttress-at-opening");
}
std::string piers(const std::string& height, const std::string& beside = "beside = \"door\"") {
    return room_design + "[buttress.flank]\non = \"room\"\n" + beside +
           "\nwidth = \"18 in\"\nheight = \"" + height +
           "\"\nprojection = \"24 in\"\nprojection_top = \"8 in\"\n";
}

} // namespace

TEST_CASE("a door is flanked by piers up to 18 in above the springline") {
    // Springline 50 in: 68 in are asked for; courses end at 65 and 70 in.
    CHECK(braced(piers("70 in")).verdict == Verdict::holds);
    CHECK(braced(piers("75 in")).verdict == Verdict::holds);
    CHECK(braced(piers("65 in")).verdict == Verdict::advice);
    CHECK(braced(piers(taken(braced(piers("65 in")), "height of (.*)\\."))).verdict ==
          Verdict::holds);
    CHECK(braced(piers("65 in")).value.value() == Approx(15 * inch));
    const Finding none = braced(room_design);
    CHECK(none.verdict == Verdict::advice);
    CHECK(none.value.value() == 0);
    CHECK(
        braced(piers(taken(none, "height = (.*), projection"), taken(none, "(beside = \"door\")")))
            .verdict == Verdict::holds);
}

TEST_CASE("one pier, or one far away, does not flank a door") {
    CHECK(braced(piers("70 in", "bearings = [210]")).verdict == Verdict::advice);
    CHECK(braced(piers("70 in", "bearings = [150, 210]")).verdict == Verdict::holds);
    const std::string far = piers("70 in", "bearings = [135, 210]");
    CHECK(braced(far).verdict == Verdict::advice);
    const auto within = [&](const std::string& length) {
        return braced(far + "[rules.doorway-pier]\nfrom_jamb = \"" + length + "\"\n").verdict;
    };
    // The door of 38 in stands at 180: on the circle of 84 in the pier's near side lies 45 degrees,
    // less asin(19/84) and 9 in, from the jamb: 37.808 in.
    const double near_side = 84 * (pi / 4 - std::asin(19.0 / 84)) - 9;
    CHECK(near_side == Approx(37.808).margin(0.001));
    CHECK(within("37.81 in") == Verdict::holds);
    CHECK(within("37.80 in") == Verdict::advice);
}

TEST_CASE("a tunnel's own walls brace its opening up to the crown") {
    const auto porch = [](const std::string& springline) {
        return with(room_design, "use = \"door\"\n", "") +
               "[tunnel.porch]\nfrom = \"room\"\nbearing = 270\nwidth = \"40 in\"\nspringline = "
               "\"" +
               springline +
               "\"\nprofile = { kind = \"round\" }\nreach = \"13 ft\"\ntube = \"main\"\n";
    };
    CHECK(braced(porch("48 in")).verdict == Verdict::holds); // crown at 68 in
    CHECK(braced(porch("47 in")).verdict == Verdict::advice);
    CHECK(braced(porch("60 in")).verdict == Verdict::holds);
}
