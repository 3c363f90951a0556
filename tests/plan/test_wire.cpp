#include "geometry/plan/wire.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

double wire(const Schedule& schedule, int course) {
    return schedule.courses[static_cast<std::size_t>(course) - 1].wire_length;
}

} // namespace

TEST_CASE("wire of full rings is two circles and two laps") {
    const Schedule schedule = lay(store_design());
    CHECK(wire(schedule, 1) == Approx(2 * (2 * pi * 61.5 * inch + 24 * inch)));
}

TEST_CASE("wire under a door's jambs is what the next course covers, with tails at the cuts") {
    const Schedule schedule = lay(store_design());
    const double covered = 61.5 * inch * (2 * pi - 2 * std::asin(16 / 61.5));
    // Course 3 is a full ring, course 4 is cut: the wire runs to the jambs and turns down.
    CHECK(wire(schedule, 3) == Approx(2 * (covered + 2 * 15 * inch)));
    CHECK(wire(schedule, 4) == Approx(2 * (covered + 2 * 15 * inch)));
}

TEST_CASE("narrow tubes take one strand, and a design may say otherwise") {
    Design design = store_design();
    CHECK(wire_strands(design, "main") == 2);
    design.tubes[0].lay_flat = 11 * inch;
    CHECK(wire_strands(design, "main") == 1);
    design.wire.strands = 3;
    CHECK(wire_strands(design, "main") == 3);
}

TEST_CASE("no wire lies on the last course, none is negative or lost over a window") {
    Design design = store_design();
    design.openings.push_back(
        opening("win", 260, 24 * inch, 40 * inch, 30 * inch, HeadKind::round));
    const Schedule schedule = lay(design);
    CHECK(schedule.courses.back().wire_length == 0);
    const Schedule without = lay(store_design());
    const OpeningPlan& window = schedule.openings.back();
    for (int n = 1; n < schedule.totals.courses; ++n) {
        CAPTURE(n);
        if (n + 1 < window.first_course || n > window.last_course)
            CHECK(wire(schedule, n) == Approx(wire(without, n)));
        else { // the hole is left out, two tails a strand turned down, and a full ring's lap goes
            const bool whole =
                schedule.courses[static_cast<std::size_t>(n) - 1].rings[0].runs.size() > 1;
            CHECK(wire(schedule, n) != Approx(wire(without, n)));
            CHECK(whole ==
                  (n >= window.first_course &&
                   schedule.courses[static_cast<std::size_t>(n) - 1].rings[0].cuts.size() > 2));
        }
    }
}
