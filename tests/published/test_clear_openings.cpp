// Openings of codes and of the trade, worked by others than this program.
#include "geometry/plan/clear_outline.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

constexpr double inch = metres_per_inch, foot = metres_per_foot;

ClearOutline bare(const Opening& written) {
    OpeningPlan plan;
    plan.form = make_opening_form(written);
    return clear_outline(plan);
}

} // namespace

TEST_CASE(
    "an escape opening of the least width must be 41 in high, of the least height 34.2 in wide") {
    // International Residential Code, R310.2: 5.7 sq ft, 20 in wide, 24 in high, all three at once;
    // that 20 by 24 in give 3.3 sq ft only is a common teaching of it (from memory).
    Opening window;
    window.width = 20 * inch;
    window.height = 24 * inch;
    window.head.kind = HeadKind::square;
    CHECK(largest_rectangle(bare(window), 20 * inch, 24 * inch)->area() / (foot * foot) ==
          Approx(3.33).margin(0.005));
    window.height = 41.04 * inch;
    CHECK(largest_rectangle(bare(window), 20 * inch, 24 * inch)->area() / (foot * foot) ==
          Approx(5.7).margin(0.001));
    window.height = 24 * inch;
    window.width = 34.2 * inch;
    CHECK(largest_rectangle(bare(window), 20 * inch, 24 * inch)->area() / (foot * foot) ==
          Approx(5.7).margin(0.001));
}

TEST_CASE(
    "a pointed door of 32 by 80 in with a head of 24 in: full width to 56 in, 7.7 in at 78 in") {
    // Reckoned by hand: arcs of radius (16^2 + 24^2) / 32 = 26 in about points 10 in past the
    // middle.
    Opening door;
    door.use = OpeningUse::door;
    door.width = 32 * inch;
    door.height = 80 * inch;
    door.head.kind = HeadKind::pointed;
    door.head.rise = 24 * inch;
    const ClearOutline outline = bare(door);
    CHECK(top_over_width(outline, 32 * inch) / inch == Approx(56).margin(1e-6));
    CHECK(2 * clear_half_width(outline, 78 * inch) / inch == Approx(7.7).margin(0.05));
}
