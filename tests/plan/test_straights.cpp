// Tunnel walls, end walls and piers as they are laid.
#include "geometry/plan/straights.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

std::vector<Straight> straights(const Schedule& schedule, int n, StraightPart part) {
    std::vector<Straight> result;
    for (const Straight& s : schedule.courses.at(static_cast<std::size_t>(n) - 1).straights)
        if (s.part == part)
            result.push_back(s);
    return result;
}

Design store_with_closed_porch() {
    Design design = store_with_porch();
    design.tunnels[0].end_wall = true;
    design.tunnels[0].reach = 160 * inch;
    return design;
}

/// Plan area of all tubes of a course, each as its centreline times its width.
double tube_area(const Course& course) {
    double area = 0;
    for (const Ring& ring : course.rings)
        for (const Run& run : ring.runs)
            area += run.length * ring.width;
    for (const Straight& straight : course.straights)
        area += straight.length * straight.width;
    return area;
}

} // namespace

TEST_CASE(
    "an end wall stands between the sides on odd courses and across their ends on even ones") {
    const Schedule schedule = lay(store_with_closed_porch());
    for (int n = 1; n <= 12; ++n) {
        CAPTURE(n);
        const auto end = straights(schedule, n, StraightPart::end);
        REQUIRE(end.size() == 1);
        CHECK(end[0].length / inch == Approx(n % 2 == 0 ? 66 : 36)); // 2 (18 + 15), 2 x 18
        // Its centreline lies half a tube within the reach, from left to right.
        const Vec2 axis = along({330}), right = right_of({330});
        CHECK(end[0].start.dot(axis) / inch == Approx(160 - 7.5));
        CHECK(end[0].end.dot(axis) / inch == Approx(160 - 7.5));
        CHECK(end[0].start.dot(right) / inch == Approx(n % 2 == 0 ? -33 : -18));
        CHECK(end[0].end.dot(right) / inch == Approx(n % 2 == 0 ? 33 : 18));
        for (const StraightPart part : {StraightPart::left, StraightPart::right}) {
            const auto side = straights(schedule, n, part);
            REQUIRE(side.size() == 1);
            CHECK(side[0].end_distance / inch == Approx(n % 2 == 0 ? 145 : 160));
        }
    }
    // The crown runs over the end wall.
    const auto crown = straights(schedule, 20, StraightPart::crown);
    REQUIRE_FALSE(crown.empty());
    CHECK(crown[0].end_distance / inch == Approx(160));
    CHECK(straights(schedule, 20, StraightPart::end).empty());
}

TEST_CASE("an opening in an end wall parts it about the axis, one in a side where it stands") {
    Design design = store_with_closed_porch();
    design.openings.push_back(
        in_porch("gate", TunnelSide::end, 0, 20 * inch, 0, 40 * inch, HeadKind::square));
    design.openings.push_back(in_porch("slit", TunnelSide::right, 115 * inch, 16 * inch, 10 * inch,
                                       20 * inch, HeadKind::square));
    const Schedule schedule = lay(design);
    const auto end = straights(schedule, 5, StraightPart::end);
    REQUIRE(end.size() == 2);
    CHECK(end[0].start_distance / inch == Approx(-18));
    CHECK(end[0].end_distance / inch == Approx(-10));
    CHECK(end[0].end_by == "gate");
    CHECK(end[1].start_distance / inch == Approx(10));
    CHECK(end[1].start_by == "gate");
    CHECK(straights(schedule, 3, StraightPart::end).size() == 1);  // below the floor
    CHECK(straights(schedule, 12, StraightPart::end).size() == 1); // middle 42.5, above its head
    // Courses 6 to 9 lie from 10 to 30 in.
    for (int n = 4; n <= 11; ++n) {
        CAPTURE(n);
        const auto right = straights(schedule, n, StraightPart::right);
        CHECK(right.size() == (n >= 6 && n <= 9 ? 2u : 1u));
        CHECK(straights(schedule, n, StraightPart::left).size() == 1);
        if (right.size() < 2)
            continue;
        CHECK(right[0].end_distance / inch == Approx(107));
        CHECK(right[0].end_by == "slit");
        CHECK(right[1].start_distance / inch == Approx(123));
    }
}

TEST_CASE("a lintel in a tunnel's wall takes up whole courses of it") {
    Design design = store_with_closed_porch();
    Opening gate = in_porch("gate", TunnelSide::end, 0, 16 * inch, 0, 40 * inch, HeadKind::square);
    gate.head.lintel = LintelSpec{};
    gate.head.lintel->bearing = 8 * inch;
    gate.head.lintel->depth = 7 * inch;
    design.openings.push_back(gate);
    Opening slit = in_porch("slit", TunnelSide::left, 115 * inch, 16 * inch, 10 * inch, 20 * inch,
                            HeadKind::square);
    slit.head.lintel = LintelSpec{};
    design.openings.push_back(slit);
    const Schedule schedule = lay(design);
    REQUIRE(schedule.lintels.size() == 2);
    const Lintel& over_gate = schedule.lintels[0];
    CHECK(over_gate.opening == "gate");
    CHECK(over_gate.bottom / inch == Approx(40));
    CHECK(over_gate.first_course == 12);
    CHECK(over_gate.last_course == 13); // 7 in take two courses of 5 in...
    CHECK(over_gate.packing / inch == Approx(3));
    CHECK(over_gate.centre_distance / inch == Approx(160 - 7.5));
    CHECK(over_gate.bearing_area == Approx(2 * 8 * 10 * inch * inch)); // 10 in wide on 15 in
    for (const int n : {12, 13}) {
        const auto end = straights(schedule, n, StraightPart::end);
        REQUIRE(end.size() == 2);
        CHECK(end[0].end_distance / inch == Approx(-16));
        CHECK(end[1].start_distance / inch == Approx(16));
    }
    CHECK(straights(schedule, 14, StraightPart::end).size() == 1);
    CHECK(schedule.lintels[1].centre_distance / inch == Approx(18 + 7.5));
    const auto left = straights(schedule, 10, StraightPart::left);
    REQUIRE(left.size() == 2);
    CHECK(left[0].end_distance / inch == Approx(115 - 20));
    CHECK(left[1].start_distance / inch == Approx(115 + 20));
}

TEST_CASE("lintels in a tunnel's side keep a tube's width of wall between them") {
    Design design = store_with_closed_porch();
    design.tunnels[0].reach = 250 * inch;
    const auto with = [&](double apart, double sill, bool lintels) {
        Design other = design;
        for (const char* id : {"one", "two"}) {
            const bool second = id == std::string("two");
            Opening window =
                in_porch(id, TunnelSide::left, (110 + (second ? apart : 0)) * inch, 24 * inch,
                         (second ? sill : 25) * inch, 20 * inch, HeadKind::square);
            if (lintels && !(second && sill > 25))
                window.head.lintel = LintelSpec{}; // bearings of 12 in: 48 in long
            other.openings.push_back(window);
        }
        return codes(other);
    };
    CHECK(with(39, 25, false).empty()); // 15 in of wall
    CHECK(with(39, 25, true) == Codes{"openings-too-close"});
    CHECK(with(62, 25, true) == Codes{"openings-too-close"});
    CHECK(with(63, 25, true).empty());
    // One over the other: the lower one's lintel lies from 45 to 50 in.
    CHECK(with(0, 60, false).empty());
    CHECK(with(0, 60, true) == Codes{"openings-too-close"});
}

TEST_CASE("a tunnel to a dome whose wall stays starts at its outside face on every course") {
    Design design = store_with_closed_porch();
    design.tunnels[0].wall_stays = true;
    const Schedule schedule = lay(design);
    for (int n = 1; n <= 12; ++n) {
        CAPTURE(n);
        const double z = schedule.courses[static_cast<std::size_t>(n) - 1].middle;
        const double outside = outside_radius(schedule.building.domes[0], z);
        const double y = 25.5 * inch;
        CHECK(straights(schedule, n, StraightPart::left)[0].start_distance ==
              Approx(std::sqrt(outside * outside - y * y)));
        for (const Cut& cut : schedule.courses[static_cast<std::size_t>(n) - 1].rings[0].cuts)
            CHECK(cut.by != "porch");
    }
}

TEST_CASE("the tubes of a course make up its wall, on odd courses as on even ones") {
    std::vector<Design> designs{store_with_porch(), store_with_closed_porch(),
                                two_stores(2.5, "store"), two_stores(3, "store"),
                                two_stores(2, "")};
    Design stays = store_with_closed_porch();
    stays.tunnels[0].wall_stays = true;
    designs.push_back(stays);
    Design linked = two_stores(6, "");
    linked.joins.clear();
    linked.tunnels.push_back(porch());
    linked.tunnels[0].to = "store2";
    linked.tunnels[0].reach.reset();
    designs.push_back(linked);
    for (std::size_t i = 0; i < designs.size(); ++i) {
        designs[i].openings.clear();
        const Schedule schedule = lay(designs[i]);
        for (const Course& course : schedule.courses) {
            const bool has_cap = std::any_of(course.rings.begin(), course.rings.end(),
                                             [](const Ring& r) { return r.kind == RingKind::cap; });
            // Crowns are laid of whole tubes, a little wider or narrower than the band.
            if (has_cap || !straights(schedule, course.number, StraightPart::crown).empty())
                continue;
            CAPTURE(i, course.number);
            // Square ends on round faces and ends on a slant leave corners of a few tenths of a
            // tube, most where two rings meet at a flat angle.
            CHECK(tube_area(course) == Approx(course.wall_area).epsilon(0.02));
        }
    }
}
