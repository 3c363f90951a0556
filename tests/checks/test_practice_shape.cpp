// As tall as wide: Hunter & Kiffmeyer 2004, chapter 11. The slack and the coil are judgements.
#include "geometry/checks/trade_findings.hpp"
#include "tests/checks/laid.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

Finding shape(const std::string& design, const std::string& code) {
    return the(shape_practice_findings(laid(design)), code);
}
std::string risen(const std::string& rise) {
    return with(room_design, "rise = \"14 ft\"", "rise = \"" + rise + "\"");
}

} // namespace

TEST_CASE("a dome about as tall as wide: 0.85 of its width at least") {
    CHECK(shape(room_design, "dome-rise").value.value() == Approx(1));
    const double at = 0.85 * 14 * 12; // 142.8 in
    CHECK(shape(risen(std::to_string(at) + " in"), "dome-rise").verdict == Verdict::holds);
    CHECK(shape(risen("143 in"), "dome-rise").verdict == Verdict::holds);
    const Finding low = shape(risen("142 in"), "dome-rise");
    CHECK(low.verdict == Verdict::advice);
    CHECK_THAT(low.source, Catch::Contains("chapter 11"));
    CHECK(shape(risen(taken(low, "rise of (.*)\\.")), "dome-rise").verdict == Verdict::holds);
}

TEST_CASE("a ring bends no tighter than half a tube's width, unless the design says so") {
    CHECK(shape(room_design, "coil-radius").verdict == Verdict::holds);
    const auto bent = [](const std::string& radius) {
        return with(room_design, "foundation = 4",
                    "foundation = 4\nleast_inside_radius = \"" + radius + "\"");
    };
    const Finding tight = shape(bent("2 in"), "coil-radius");
    REQUIRE(tight.verdict == Verdict::advice);
    const double half = stadium_width(20 * inch, 5 * inch) / 2;
    CHECK(tight.limit.value() == Approx(half));
    CHECK(tight.value.value() < half);
    CHECK(shape(bent(taken(tight, "radius = (.*) in \\[course")), "coil-radius").verdict ==
          Verdict::holds);
}
