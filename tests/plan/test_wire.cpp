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

    // What counts as narrow is a rule, which a design may set.
    Design other = store_design();
    other.limits["wire.narrow_lay_flat"].value = 18 * inch;
    CHECK(wire_strands(other, "main") == 1);
    const double single = wire(lay(other), 1);
    other.limits["wire.narrow_lay_flat"].value = 17 * inch; // not under it
    CHECK(wire_strands(other, "main") == 2);
    CHECK(wire(lay(other), 1) == Approx(2 * single));
}

namespace {

/// Half-width, inches, of a window 24 in wide from 40 to 70 in with a round head, at the middle of
/// a course of the store; 0 where it is narrower than a course is high: there the ring runs on.
double window_half_width(int course) {
    const double z = (course - 3.5) * 5, above = z - 58;
    if (z < 40 || z >= 70)
        return 0;
    const double a = above <= 0 ? 12 : std::sqrt(144 - above * above);
    return 2 * a >= 5 ? a : 0;
}

} // namespace

TEST_CASE("no wire lies on the last course, none is negative or lost over a window") {
    Design design = store_design();
    design.openings.push_back(
        opening("win", 260, 24 * inch, 40 * inch, 30 * inch, HeadKind::round));
    const Schedule schedule = lay(design);
    CHECK(schedule.courses.back().wire_length == 0);
    const Schedule without = lay(store_design());
    const auto half_angle = [&](int n) {
        const Ring& ring = schedule.courses[static_cast<std::size_t>(n) - 1].rings[0];
        return std::asin(window_half_width(n) * inch / ring.centre_radius);
    };
    int changed = 0;
    for (int n = 1; n < schedule.totals.courses; ++n) {
        CAPTURE(n);
        // The wider of the holes under and over the joint is left out, and each of two strands is
        // turned down at both its jambs. The door's gap is there with and without the window.
        const double gap =
            2 * std::max(half_angle(n), n + 1 < schedule.totals.courses ? half_angle(n + 1) : 0);
        const Ring& ring = schedule.courses[static_cast<std::size_t>(n) - 1].rings[0];
        const double change = gap > 0 ? 2 * (2 * 15 * inch - gap * ring.centre_radius) : 0;
        CHECK(wire(schedule, n) - wire(without, n) == Approx(change).margin(1e-9));
        changed += gap > 0;
    }
    CHECK(changed == 7); // 12 to 17 are cut; 11 lies under the first
}

TEST_CASE("on a cap disc the wire runs under each bag of the disc above") {
    // A round dome of 12 ft: its crown is so flat that the last discs have few bags, whose middles
    // may lie beyond the next disc's rim.
    Design design = store_design();
    design.openings.clear();
    design.domes[0].datum.clear();
    design.domes[0].profile = {};
    design.domes[0].profile.kind = ProfileKind::round;
    int discs = 0; // under another
    for (const double diameter : {96.0, 120.0, 144.0, 168.0, 192.0})
        for (const double springline : {20.0, 32.0, 45.0}) {
            CAPTURE(diameter, springline);
            design.domes[0].inside_diameter = diameter * inch;
            design.domes[0].springline = springline * inch;
            const Schedule schedule = lay(design);
            for (int n = 1; n < schedule.totals.courses; ++n) {
                CAPTURE(n);
                const Ring& above = schedule.courses[static_cast<std::size_t>(n)].rings[0];
                CHECK(wire(schedule, n) > 0);
                const Ring& ring = schedule.courses[static_cast<std::size_t>(n) - 1].rings[0];
                if (ring.kind != RingKind::cap)
                    continue;
                ++discs;
                // Chords at the middles of equal strips across the disc above.
                const double count = static_cast<double>(above.runs.at(0).tubes.size());
                double chords = 0;
                for (int i = 0; i < static_cast<int>(count); ++i) {
                    const double share = (2 * i + 1) / count - 1; // of the radius
                    chords += 2 * above.outside_radius * std::sqrt(1 - share * share);
                }
                CHECK(wire(schedule, n) == Approx(2 * chords));
            }
        }
    CHECK(discs > 5);
}
