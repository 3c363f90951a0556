#include "geometry/plan/ring_gaps.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

const Cut& cut_by(const Schedule& schedule, int course, const std::string& by, Side side) {
    for (const Cut& cut : schedule.courses.at(static_cast<std::size_t>(course) - 1).rings[0].cuts)
        if (cut.by == by && cut.side == side)
            return cut;
    throw std::runtime_error("no such cut");
}

int cuts_by(const Schedule& schedule, int course, const std::string& by) {
    int count = 0;
    for (const Cut& cut : schedule.courses.at(static_cast<std::size_t>(course) - 1).rings[0].cuts)
        count += cut.by == by;
    return count;
}

} // namespace

TEST_CASE("the porch cuts odd courses at its void and even ones at its outside") {
    // b 18 in on r 54: 19.47 degrees; b + w = 33 in: 37.67 degrees. Reckoned.
    const Schedule schedule = lay(store_with_porch());
    CHECK(cut_by(schedule, 5, "porch", Side::right).inside_bearing ==
          Approx(std::fmod(330 + 19.4712206, 360)).margin(1e-6));
    CHECK(cut_by(schedule, 5, "porch", Side::right).half_width == Approx(18 * inch));
    CHECK(cut_by(schedule, 4, "porch", Side::right).inside_bearing ==
          Approx(330 + 37.6698859 - 360).margin(1e-6));
    CHECK(cut_by(schedule, 4, "porch", Side::left).inside_bearing ==
          Approx(330 - 37.6698859).margin(1e-6));
    for (int n = 1; n <= 3; ++n)
        CHECK(cuts_by(schedule, n, "porch") == 0); // below the floor the ring runs on
    // Leaning courses, from 8 on: the ring acts as a ring and only the void cuts it.
    for (int n = 8; n <= 12; ++n)
        CHECK(cut_by(schedule, n, "porch", Side::right).half_width == Approx(18 * inch));
}

TEST_CASE("a buttress takes its width out of even plumb courses only") {
    const Schedule schedule = lay(store_with_porch());
    for (int n = 1; n <= 11; ++n) {
        CAPTURE(n);
        const bool even_plumb = n % 2 == 0 && n <= 7; // below the floor too
        CHECK(cuts_by(schedule, n, "flank-1") == (even_plumb ? 2 : 0));
    }
    CHECK(cut_by(schedule, 4, "flank-1", Side::left).half_width == Approx(15 * inch));
}

TEST_CASE("straights run from the ring's face to their end, by bond") {
    const Schedule schedule = lay(store_with_porch());
    const auto straights = [&](int n, StraightPart part) {
        std::vector<Straight> result;
        for (const Straight& s : schedule.courses.at(static_cast<std::size_t>(n) - 1).straights)
            if (s.part == part)
                result.push_back(s);
        return result;
    };
    const double y = 18 + 7.5;
    REQUIRE(straights(5, StraightPart::left).size() == 1);
    CHECK(straights(5, StraightPart::left)[0].length / inch ==
          Approx(114 - std::sqrt(69 * 69 - y * y)));
    CHECK(straights(4, StraightPart::right)[0].length / inch ==
          Approx(114 - std::sqrt(54 * 54 - y * y)));
    CHECK(straights(2, StraightPart::right)[0].length / inch ==
          Approx(114 - std::sqrt(69 * 69 - y * y))); // below the floor they butt on every course
    REQUIRE(straights(5, StraightPart::pier).size() == 4); // two piers of two tubes
    const double z = schedule.courses[4].middle / inch;
    const double face = 69 + 30 - 15 * z / 40;
    CHECK(straights(5, StraightPart::pier)[0].length / inch ==
          Approx(face - std::sqrt(69 * 69 - 7.5 * 7.5)));
    CHECK_FALSE(straights(20, StraightPart::crown).empty());
}

TEST_CASE("overlapping gaps are one, and a gap over the whole circle leaves nothing") {
    RingGap a{"a", 10, 0.5, 0, 0}, b{"b", 40, 0.5, 0, 0}, c{"c", 350, 0.4, 0, 0};
    const auto arcs = kept_arcs({a, b, c}, 1.0); // half-angles 30, 30, 23.6: all one
    REQUIRE(arcs.size() == 1);
    CHECK(arcs[0].start == Approx(70));
    CHECK(arcs[0].end == Approx(350 - 23.5781785 + 0).margin(1e-6));
    RingGap swallow;
    swallow.by = "big";
    swallow.disc_distance = 0.5;
    swallow.disc_radius = 3;
    CHECK(kept_arcs({swallow}, 1.0).empty());
    RingGap far = swallow;
    far.disc_distance = 5;
    CHECK(half_gap_degrees(far, 1.0) == 0);
    // Two circles of radius 1 at distance 1 cross 60 degrees either side of the line of centres.
    far.disc_distance = 1;
    far.disc_radius = 1;
    CHECK(half_gap_degrees(far, 1.0) == Approx(60));
}

TEST_CASE("runs and gaps make up every circle, with random gaps") {
    for (std::uint64_t seed = 1; seed <= 2000; ++seed) {
        CAPTURE(seed);
        Dice dice(seed);
        std::vector<RingGap> gaps;
        const int count = dice.whole(1, 6);
        const double radius = dice.between(1, 3);
        for (int i = 0; i < count; ++i) {
            RingGap gap;
            gap.by = std::string(1, static_cast<char>('a' + i));
            gap.middle = dice.between(0, 360);
            if (dice.chance(0.6)) {
                gap.half_width = dice.between(0.05, 0.9);
            } else {
                gap.disc_distance = dice.between(1, 4);
                gap.disc_radius = dice.between(0.5, 2.5);
            }
            gaps.push_back(gap);
        }
        const auto arcs = kept_arcs(gaps, radius);
        double kept = 0;
        for (const KeptArc& arc : arcs) {
            CHECK(arc.start < arc.end);
            kept += arc.end - arc.start;
        }
        // By a fine sample of the circle.
        constexpr int parts = 3600;
        int free = 0;
        for (int i = 0; i < parts; ++i) {
            const double at = (i + 0.5) * 360 / parts;
            bool taken = false;
            for (const RingGap& gap : gaps) {
                const double turn = std::fmod(at - gap.middle + 720, 360);
                taken = taken || std::min(turn, 360 - turn) < half_gap_degrees(gap, radius);
            }
            free += !taken;
            bool in_arc = false;
            for (const KeptArc& arc : arcs)
                for (const double turn : {-360.0, 0.0, 360.0})
                    in_arc = in_arc || (at + turn > arc.start && at + turn < arc.end);
            CHECK(in_arc == !taken);
        }
        CHECK(kept == Approx(free * 360.0 / parts).margin(1.5));
    }
}

TEST_CASE(
    "a stopped ring is bonded into the kept wall on even plumb courses, and butts on others") {
    // R 54 and 69 in, poles 2.5 m apart. On a circle of radius r about one pole the other's circle
    // of radius R crosses at acos((r^2 + d^2 - R^2) / (2 r d)) from the line between the poles.
    const double d = 2.5 / inch;
    const auto crossing = [&](double r, double other) {
        return std::acos((r * r + d * d - other * other) / (2 * r * d)) / radians_per_degree;
    };
    const Schedule schedule = lay(two_stores(2.5, "store"));
    const auto cuts = [&](int n, const std::string& dome, const std::string& by) {
        std::vector<Cut> result;
        for (const Ring& ring : schedule.courses.at(static_cast<std::size_t>(n) - 1).rings)
            for (const Cut& cut : ring.cuts)
                if (ring.dome == dome && cut.by == by)
                    result.push_back(cut);
        return result;
    };
    for (int n = 1; n <= 12; ++n) {
        CAPTURE(n);
        const double z = schedule.courses[static_cast<std::size_t>(n) - 1].middle;
        const double r = inside_radius(schedule.building.domes[0], z) / inch;
        const bool bonded = n % 2 == 0 && n <= 7; // the springline lies at the top of course 7
        const auto stopped = cuts(n, "store2", "store");
        REQUIRE(stopped.size() == 2);
        for (const Cut& cut : stopped) // store2's datum is north, the store lies west of it
            CHECK(std::abs(cut.inside_bearing - 270) ==
                  Approx(crossing(r, bonded ? r : r + 15)).margin(1e-6));
        const auto kept = cuts(n, "store", "store2");
        REQUIRE(kept.size() == (bonded ? 4u : 0u));
        if (!bonded)
            continue;
        std::vector<double> found;
        for (const Cut& cut : kept)
            found.push_back(cut.inside_bearing);
        std::sort(found.begin(), found.end());
        const double outer = crossing(r, r + 15), inner = crossing(r, r);
        CHECK(found[0] == Approx(90 - outer).margin(1e-6));
        CHECK(found[1] == Approx(90 - inner).margin(1e-6));
        CHECK(found[2] == Approx(90 + inner).margin(1e-6));
        CHECK(found[3] == Approx(90 + outer).margin(1e-6));
    }
}

TEST_CASE("a join whose rings butt is bonded in no course") {
    Design design = two_stores(2.5, "store");
    design.joins[0].bonded = false;
    const Schedule schedule = lay(design);
    int stopped = 0;
    for (const Course& course : schedule.courses)
        for (const Ring& ring : course.rings) {
            if (ring.dome == "store")
                CHECK(std::none_of(ring.cuts.begin(), ring.cuts.end(),
                                   [](const Cut& cut) { return cut.by == "store2"; }));
            for (const Cut& cut : ring.cuts)
                if (ring.dome == "store2" && cut.by == "store") {
                    // On the outside of the wall that stays; near the top the ring ends by it
                    // before its inside face does.
                    const double r = ring.inside_radius, other = r + 15 * inch, d = 2.5;
                    const double cosine = (r * r + d * d - other * other) / (2 * r * d);
                    if (cosine > 1)
                        continue;
                    ++stopped;
                    CHECK(std::abs(cut.inside_bearing - 270) * radians_per_degree ==
                          Approx(std::acos(cosine)).margin(1e-6));
                }
        }
    CHECK(stopped > 30);
}

TEST_CASE("in an open plan the rings take turns in running through to the other's room") {
    const Schedule schedule = lay(two_stores(2, ""));
    for (int n = 1; n <= 7; ++n)
        for (const Ring& ring : schedule.courses.at(static_cast<std::size_t>(n) - 1).rings) {
            CAPTURE(n, ring.dome);
            const std::string other = ring.dome == "store" ? "store2" : "store";
            const double centre = ring.dome == "store" ? 90 : 270;
            int found = 0;
            for (const Cut& cut : ring.cuts) {
                if (cut.by != other)
                    continue;
                ++found;
                const double r = 54, d = 2 / inch;
                const bool through = (ring.dome == "store") == (n % 2 == 1);
                const double face = through ? 54 : 69;
                CHECK(std::abs(cut.inside_bearing - centre) ==
                      Approx(std::acos((r * r + d * d - face * face) / (2 * r * d)) /
                             radians_per_degree)
                          .margin(1e-6));
            }
            CHECK(found == 2);
        }
}

TEST_CASE("a pier behind a lintel butts, and the ring's tubes stop at the lintel alone") {
    Design design = store_design();
    design.domes[0].springline = 60 * inch;
    design.openings[0].head = {};
    design.openings[0].height = 30 * inch;
    design.openings[0].head.lintel = LintelSpec{};
    Buttress beside = flank();
    beside.bearings.clear();
    beside.beside = "door";
    beside.height = 60 * inch;
    design.buttresses.push_back(beside);
    const Schedule schedule = lay(design);
    // Courses of 5 in, 3 below the floor: the lintel takes course 10, an even one.
    REQUIRE(schedule.lintels.at(0).first_course == 10);
    CHECK(cuts_by(schedule, 8, "flank-1") == 2); // a wedge lies between it and the door's jamb
    CHECK(cuts_by(schedule, 10, "flank-1") == 0);
    CHECK(cuts_by(schedule, 10, "door") == 2);
    CHECK(cut_by(schedule, 10, "door", Side::left).half_width == Approx(28 * inch));
    CHECK(cuts_by(schedule, 12, "flank-1") == 2);
    for (const Straight& straight : schedule.courses[9].straights)
        CHECK(straight.start.norm() >= 54 * inch + 10 * inch);
}
