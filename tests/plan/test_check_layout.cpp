#include "geometry/plan/check_layout.hpp"

#include "geometry/plan/lay.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

std::vector<std::string> codes(const Design& design) {
    std::vector<std::string> result;
    for (const Diagnostic& diagnostic : check_layout(design)) {
        CHECK_FALSE(diagnostic.message.empty());
        CHECK_FALSE(diagnostic.allowed.empty());
        CHECK_FALSE(diagnostic.example.empty());
        result.push_back(diagnostic.code);
    }
    return result;
}

using Codes = std::vector<std::string>;

} // namespace

TEST_CASE("the store is laid without a fault") {
    CHECK(codes(store_design()).empty());
}

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

TEST_CASE("profiles and tops that leave nothing to lay are refused") {
    Design tiny = store_design();
    tiny.course.least_inside_radius = 60 * inch;
    CHECK(codes(tiny) == Codes{"dome-without-ring"});
    Design tall = store_design();
    tall.openings.clear();
    tall.course.height = 0.02;
    tall.domes[0].profile.rise = 9.0;
    CHECK(codes(tall) == Codes{"too-many-courses"});
    Design plumb = store_design();
    plumb.openings.clear();
    plumb.domes[0].profile = {};
    plumb.domes[0].profile.kind = ProfileKind::drawn;
    plumb.domes[0].profile.points = {{0, 1.3716}, {2, 1.3716}, {2.001, 0}};
    CHECK(codes(plumb).size() == 1);
}

TEST_CASE("domes that meet are refused unless a join says whose wall stays") {
    Design design = store_design();
    Dome second = design.domes[0];
    second.id = "store2";
    second.datum.clear();
    second.at = {3.0, 0}; // outsides of 69 in: they touch at 3.505 m
    design.domes.push_back(second);
    CHECK(codes(design) == Codes{"domes-overlap"});
    design.domes.back().at = {3.6, 0};
    CHECK(codes(design) == Codes{"domes-touch"});
    design.domes.back().at = {4.2, 0};
    CHECK(codes(design).empty());

    Join join;
    join.id = "bath";
    join.first = "store";
    join.second = "store2";
    join.keep = "store";
    design.openings[0].bearing = {270};
    design.joins.push_back(join);
    CHECK(codes(design) == Codes{"join-does-not-meet"});
    design.domes.back().at = {3.0, 0};
    CHECK(codes(design).empty());
    design.domes.back().at = {1.0, 0};
    CHECK(codes(design) == Codes{"join-swallows"});
    design.joins[0].keep.clear(); // open plan: the rooms must open to each other
    design.domes.back().at = {2.6, 0};
    CHECK(codes(design) == Codes{"join-does-not-meet"});
    design.domes.back().at = {2.0, 0};
    CHECK(codes(design).empty());
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

TEST_CASE("tunnels must be longer, lower and narrower than their domes") {
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
    const auto with = [&](auto change) {
        Design other = design;
        other.tunnels.push_back(tunnel);
        change(other.tunnels.back());
        return codes(other);
    };
    CHECK(with([](Tunnel&) {}).empty());
    CHECK(with([](Tunnel& t) { t.reach = 75 * inch; }) == Codes{"tunnel-too-short"});
    CHECK(with([](Tunnel& t) { t.springline = 95 * inch; }) == Codes{"tunnel-too-high"});
    CHECK(with([](Tunnel& t) {
              t.width = 108 * inch;
              t.profile.rise = 60 * inch;
              t.springline = 0;
          }) == Codes{"tunnel-too-wide"});
    CHECK(with([](Tunnel& t) { t.bearing = {160}; }) == Codes{"openings-overlap"});
    CHECK(with([](Tunnel& t) { t.bearing = {215}; }) == Codes{"openings-too-close"});

    Opening window = opening("eye", 0, 20 * inch, 30 * inch, 20 * inch, HeadKind::round);
    window.in = "porch";
    const auto with_window = [&](bool wall, TunnelSide side, double along, double width) {
        Design other = design;
        other.tunnels.push_back(tunnel);
        other.tunnels.back().end_wall = wall;
        if (!wall)
            other.tunnels.back().reach = 160 * inch;
        other.openings.push_back(window);
        other.openings.back().side = side;
        other.openings.back().along = along;
        other.openings.back().width = width;
        return codes(other);
    };
    CHECK(with_window(false, TunnelSide::end, 0, 20 * inch) == Codes{"opening-without-wall"});
    CHECK(with_window(true, TunnelSide::end, 0, 20 * inch).empty());
    CHECK(with_window(true, TunnelSide::end, 0, 30 * inch) == Codes{"opening-too-wide"});
    CHECK(with_window(false, TunnelSide::left, 115 * inch, 20 * inch).empty());
    CHECK(with_window(false, TunnelSide::left, 80 * inch, 20 * inch) == Codes{"opening-off-wall"});
}

TEST_CASE("buttresses must meet their ring and leave openings free") {
    Design design = store_design();
    Buttress buttress;
    buttress.id = "flank";
    buttress.on = "store";
    buttress.bearings = {60, 240};
    buttress.width = 30 * inch;
    buttress.height = 40 * inch;
    buttress.projection = 30 * inch;
    buttress.projection_top = 15 * inch;
    const auto with = [&](auto change) {
        Design other = design;
        other.buttresses.push_back(buttress);
        change(other.buttresses.back());
        return codes(other);
    };
    CHECK(with([](Buttress&) {}).empty());
    // (width/2)^2 <= 2 r w + w^2 with r 52 in at the top course: 86 in at the most.
    CHECK(with([](Buttress& b) {
              b.width = 90 * inch;
              b.bearings = {330};
          }) == Codes{"buttress-too-wide"});
    CHECK(with([](Buttress& b) { b.bearings = {150}; }) == Codes{"openings-overlap"});
    CHECK(with([](Buttress& b) {
              b.bearings.clear();
              b.beside = "door";
          }).empty());
    CHECK(with([](Buttress& b) { b.bearings = {60, 80}; }) == Codes{"elements-meet"});
    CHECK(with([](Buttress& b) {
              b.height = 200 * inch;
              b.projection_top = 0;
          }) == Codes{"buttress-too-high"});
}

TEST_CASE("a hole too small to cut any course is refused, not dropped in silence") {
    Design design = store_design();
    design.openings.push_back(
        opening("pipe", 330, 4 * inch, 30 * inch, 4 * inch, HeadKind::circle));
    CHECK(codes(design) == Codes{"opening-cuts-nothing"});
}

TEST_CASE("unsound elements are skipped and the rest is still judged") {
    Design design = store_design();
    design.openings.push_back(opening("win", 170, 24 * inch, 0, 30 * inch, HeadKind::square));
    design.openings.push_back(opening("bad", 20, 500 * inch, 0, 30 * inch, HeadKind::square));
    design.openings.back().sound = false;
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.domes[0].sound = false;
    CHECK(codes(design).empty());
}
