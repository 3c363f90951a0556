// Openings that do not fit, alone or beside what else takes the wall.
#include "geometry/plan/check_layout.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("an opening wider than the inside at its height is refused") {
    Design design = store_design();
    design.openings[0].width = 107 * inch;
    design.openings[0].head.kind = HeadKind::square;
    CHECK(codes(design) == Codes{"opening-too-wide"});
    // Where the stem is plumb 98 % of the inside circle may be taken, no more.
    design.openings[0].height = 15 * inch;
    design.openings[0].width = 2 * 54 * 0.979 * inch;
    CHECK(codes(design).empty());
    design.openings[0].width = 2 * 54 * 0.981 * inch;
    CHECK(codes(design) == Codes{"opening-too-wide"});
    // Narrow enough on the floor, too wide where the dome leans in: r at 90 in is 33.96 in.
    Design high = store_design();
    high.openings.push_back(opening("win", 330, 66 * inch, 80 * inch, 20 * inch, HeadKind::square));
    CHECK(codes(high) == Codes{"opening-too-wide"});
    high.openings.back().width = 40 * inch;
    CHECK(codes(high).empty());
    high.openings.back().head.lintel = LintelSpec{};
    // Its lintel, 12 in longer each side, at 100 in where r is 27.7 in: longer than the room is
    // wide.
    CHECK(codes(high) == Codes{"lintel-too-long"});
}

TEST_CASE("a head above the last ring is refused") {
    Design design = store_design();
    design.openings.push_back(
        opening("win", 330, 8 * inch, 80 * inch, 45 * inch, HeadKind::square));
    CHECK(codes(design) == Codes{"opening-too-high"});
}

TEST_CASE("openings need a tube's width of wall between them") {
    Design design = store_design();
    const auto with = [&](double bearing, double sill) {
        Design other = design;
        other.openings.push_back(
            opening("win", bearing, 24 * inch, sill, 30 * inch, HeadKind::segmental));
        other.openings.back().head.rise = 4 * inch;
        return codes(other);
    };
    // On the plumb stem the inside radius is 54 in: half angles asin(16/54) and asin(12/54) and a
    // 15 in arc between make 45.9 degrees; the dome leans in above, so the limit is a little more.
    CHECK(with(150 + 30, 0) == Codes{"openings-overlap"});
    CHECK(with(150 + 45, 0) == Codes{"openings-too-close"});
    CHECK(with(150 + 60, 0).empty());
    CHECK(with(150 - 45, 0) == Codes{"openings-too-close"});
    CHECK(with(150 - 60, 0).empty());
    // Above the door: its head ends at 80 in; a sill at 90 in is too near, one at 95 is not.
    Design above = store_design();
    above.openings[0].height = 50 * inch;
    above.openings.push_back(
        opening("eye", 150, 12 * inch, 60 * inch, 12 * inch, HeadKind::circle));
    CHECK(codes(above) == Codes{"openings-too-close"});
    above.openings.back().sill = 65 * inch;
    CHECK(codes(above).empty());
}

namespace {

/// The design with an opening's measures as an example writes them: `sill = "0 in", height = "3
/// ft"`.
Design with_example(Design design, const std::string& id, const std::string& example) {
    for (Opening& opening : design.openings) {
        if (opening.id != id)
            continue;
        const std::regex pair("([a-z]+) = (?:\"([^\"]+)\"|([0-9.]+))");
        int count = 0;
        for (std::sregex_iterator at(example.begin(), example.end(), pair), end; at != end; ++at) {
            ++count;
            const std::string key = (*at)[1];
            if (key == "bearing") {
                opening.bearing = {std::stod((*at)[3])};
                continue;
            }
            const LengthReading value = read_length((*at)[2].str(), design.unit);
            REQUIRE(value.fault == "");
            double& measure = key == "width"    ? opening.width
                              : key == "height" ? opening.height
                                                : opening.sill;
            REQUIRE((key == "width" || key == "height" || key == "sill"));
            measure = value.value;
        }
        REQUIRE(count > 0);
    }
    return design;
}

} // namespace

TEST_CASE("the example value of a misplaced opening works") {
    int alone = 0, beside = 0;
    for (std::uint64_t seed = 1; seed <= 600; ++seed) {
        Dice dice(seed);
        Design design = store_design();
        design.unit = dice.chance(0.5) ? DisplayUnit::feet : DisplayUnit::metres;
        const int windows = dice.whole(1, 4);
        for (int i = 0; i < windows; ++i) {
            const auto kind = static_cast<HeadKind>(dice.whole(0, 4));
            const double width = dice.between(0.3, 1.4);
            const double height =
                kind == HeadKind::circle ? width : std::max(width / 2, dice.between(0.3, 2.5));
            design.openings.push_back(opening(("w" + std::to_string(i)).c_str(),
                                              dice.between(0, 360), width, dice.between(0, 2.5),
                                              height, kind));
            if (kind == HeadKind::pointed || kind == HeadKind::segmental)
                design.openings.back().head.rise =
                    std::min(height, width * (kind == HeadKind::pointed ? 0.7 : 0.3));
        }
        for (const Diagnostic& fault : check_layout(design)) {
            const std::string id = fault.subject.substr(std::string("opening.").size());
            const bool is_alone =
                fault.code == "opening-too-high" || fault.code == "opening-too-wide";
            CAPTURE(seed, fault.code, fault.subject, fault.message, fault.example);
            const Design mended = with_example(design, id, fault.example);
            for (const Diagnostic& left : check_layout(mended)) {
                CAPTURE(left.code, left.subject, left.message);
                if (left.subject != fault.subject)
                    continue;
                // What fits in the wall by itself may still stand too near to others.
                CHECK(is_alone);
                CHECK((left.code == "openings-overlap" || left.code == "openings-too-close"));
            }
            ++(is_alone ? alone : beside);
        }
    }
    CHECK(alone > 100);
    CHECK(beside > 100);
}

TEST_CASE("an opening that loses its ground to a joined dome is refused") {
    Design design = store_design();
    Dome second = design.domes[0];
    second.id = "store2";
    second.datum.clear();
    second.at = {2.0, 0};
    design.domes.push_back(second);
    Join join;
    join.id = "open";
    join.first = "store";
    join.second = "store2";
    design.joins.push_back(join);
    design.openings[0].bearing = {90}; // straight into the other room
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.openings[0].bearing = {270};
    CHECK(codes(design).empty());
}

TEST_CASE("a hole too small to cut any course is refused, not dropped in silence") {
    Design design = store_design();
    design.openings.push_back(
        opening("pipe", 330, 4 * inch, 30 * inch, 4 * inch, HeadKind::circle));
    CHECK(codes(design) == Codes{"opening-cuts-nothing"});
}

TEST_CASE("the example value of a hole that cuts no course works") {
    int count = 0;
    for (std::uint64_t seed = 1; seed <= 200; ++seed) {
        Dice dice(seed);
        Design design = store_design();
        design.unit = dice.chance(0.5) ? DisplayUnit::feet : DisplayUnit::metres;
        const bool circle = dice.chance(0.3);
        // Slots between two middles of courses, pipes, and slits narrower than a course.
        const double height = dice.between(0.02, 0.2);
        const double width = circle ? height : dice.between(0.05, 0.6);
        design.openings.push_back(opening("hole", 330, width, dice.between(0.1, 1.5), height,
                                          circle ? HeadKind::circle : HeadKind::square));
        for (const Diagnostic& fault : check_layout(design)) {
            CAPTURE(seed, fault.code, fault.message, fault.example);
            REQUIRE(fault.code == "opening-cuts-nothing");
            CHECK(check_layout(with_example(design, "hole", fault.example)).empty());
            ++count;
        }
    }
    CHECK(count > 60);
}

TEST_CASE("a sill below the floor is refused, in a dome and in a tunnel") {
    Design design = store_design();
    design.openings[0].sill = -5 * inch;
    CHECK(codes(design) == Codes{"opening-below-floor"});
    Design gate = store_with_porch();
    gate.tunnels[0].end_wall = true;
    gate.openings.push_back(
        in_porch("gate", TunnelSide::end, 0, 16 * inch, -2 * inch, 40 * inch, HeadKind::square));
    CHECK(codes(gate) == Codes{"opening-below-floor"});
    gate.openings.back().sill = 0;
    CHECK(codes(gate).empty());
}

TEST_CASE("a fan must spring from a joint, and the height that is offered lets it") {
    Design design = store_design();
    Opening& door = design.openings[0];
    door.head.kind = HeadKind::round;
    door.head.rise.reset();
    door.head.laid = HeadLaid::fan;
    for (double height = 60; height < 72; height += 0.5) {
        CAPTURE(height);
        door.height = height * inch;
        const double off =
            std::abs(std::remainder(height - 16, 5)) * inch; // springing, courses of 5 in
        const auto faults = check_layout(design);
        REQUIRE(faults.empty() == (off <= 0.010));
        if (faults.empty())
            continue;
        CHECK(faults[0].code == "fan-off-joint");
        const std::string example = faults[0].example;
        const auto from = example.find('"') + 1;
        Design mended = design;
        mended.openings[0].height =
            read_length(example.substr(from, example.rfind('"') - from), DisplayUnit::feet).value;
        CHECK(check_layout(mended).empty());
    }
}

TEST_CASE("a door may lead into a porch for which the dome's wall stays") {
    Design design = store_with_porch();
    design.tunnels[0].bearing = {150};
    design.buttresses.clear();
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.tunnels[0].wall_stays = true;
    // The door is 32 in wide under a head to 80 in, the porch 36 in wide and 81 in high: its vault
    // is narrower than the door's head at some height.
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.tunnels[0].springline = 60 * inch;
    CHECK(codes(design).empty());
    design.openings[0].bearing = {152}; // 2 degrees on 69 in are 2.4 in: 16 + 2.4 > 18
    CHECK(codes(design) == Codes{"openings-overlap"});
}

TEST_CASE(
    "an opening on the place where another dome's ring stands is refused, a doorway between not") {
    Design design = two_stores(2.5, "store");
    CHECK(codes(design).empty());
    Opening between = opening("between", 90, 24 * inch, 0, 40 * inch, HeadKind::square);
    design.openings.push_back(between);
    CHECK(codes(design).empty());
    // store2's ring stands at 24 to 45 degrees from the line between the poles: see the bond's
    // test.
    design.openings.back().bearing = {130};
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.openings.back().bearing = {115};
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.openings.back().bearing = {180};
    CHECK(codes(design).empty());
}

TEST_CASE("voids that leave less than half a tube of wall between them are refused") {
    Design design = store_with_porch();
    design.buttresses.clear();
    design.openings.clear();
    Tunnel second = design.tunnels[0];
    second.id = "back";
    design.tunnels.push_back(second);
    // At 55 in the inside radius is sqrt(135^2 - 35^2) - 81 = 49.4 in and the outsides are
    // sqrt(45^2 - 10^2) - 27 + 15 = 31.9 in: 40.2 degrees each side; half a tube, 7.5 in,
    // takes 8.7.
    for (const auto& [turn, code] : {std::pair{76.0, "elements-meet"},
                                     {82.0, "wall-sliver"},
                                     {88.0, "wall-sliver"},
                                     {90.0, ""}}) {
        CAPTURE(turn);
        design.tunnels[1].bearing = {330 - turn};
        CHECK(codes(design) == (std::string(code).empty() ? Codes{} : Codes{code}));
    }
}

TEST_CASE("a circle on the wall's own foot is refused in a tunnel as in a dome") {
    Design design = store_design();
    design.course.foundation = 0;
    design.openings.clear();
    design.domes[0].datum.clear();
    design.tunnels = {porch()};
    design.tunnels[0].reach = 160 * inch;
    for (const bool end : {false, true}) {
        CAPTURE(end);
        design.tunnels[0].end_wall = end;
        design.openings = {in_porch("eye", end ? TunnelSide::end : TunnelSide::left, 110 * inch,
                                    16 * inch, 0, 16 * inch, HeadKind::circle)};
        CHECK(codes(design) == Codes{"opening-at-foot"});
        design.openings[0].sill = 2.4 * inch;
        CHECK(codes(design) == Codes{"opening-at-foot"});
        design.openings[0].sill = 2.6 * inch; // half a course above the foot
        CHECK(codes(design).empty());
    }
}

TEST_CASE("an opening clears the outside of a joined dome's wall through its own") {
    // Poles 90 in apart: the other's outside, 69 in, meets the inside face at 49.95 degrees from
    // the line between them and the outside at 49.3; the hole, 8.5 degrees to a side, starts
    // at 50.5.
    for (const std::string keep : {"", "store2"}) {
        CAPTURE(keep);
        Design design = two_stores((keep.empty() ? 90 : 120) * inch, keep);
        const auto at = [&](double from_line) {
            Design other = design;
            other.openings.push_back(
                opening("slot", 90 - from_line, 16 * inch, 0, 15 * inch, HeadKind::square));
            return codes(other);
        };
        if (keep.empty()) {
            CHECK(at(59) == Codes{"opening-blocked"});
            CHECK(at(64).empty());
        } else {
            // By the law of cosines the other's outside meets the inside face at 14.38 degrees; a
            // tube's width, 15.92 degrees, stays on it.
            CHECK(at(14.38 + 15.92 + 8.6).empty());
            CHECK(at(14.38 + 15.92 + 8.4) == Codes{"openings-too-close"});
        }
    }
}
