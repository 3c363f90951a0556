#include "geometry/plan/ring_gaps.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

Design store_with_porch() {
    Design design = store_design();
    Tunnel tunnel;
    tunnel.id = "porch";
    tunnel.from = "store";
    tunnel.bearing = {330};
    tunnel.width = 36 * inch;
    tunnel.springline = 45 * inch;
    tunnel.profile.kind = ProfileKind::pointed;
    tunnel.profile.rise = 36 * inch;
    tunnel.reach = 114 * inch;
    tunnel.tube = "main";
    design.tunnels.push_back(tunnel);
    Buttress buttress;
    buttress.id = "flank";
    buttress.on = "store";
    buttress.bearings = {60, 240};
    buttress.width = 30 * inch;
    buttress.height = 40 * inch;
    buttress.projection = 30 * inch;
    buttress.projection_top = 15 * inch;
    design.buttresses.push_back(buttress);
    return design;
}

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
        const bool even_plumb = n % 2 == 0 && n > 3 && n <= 7;
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
