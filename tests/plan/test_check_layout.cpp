// Domes, joins, tunnels, buttresses: what cannot be laid is refused.
#include "geometry/plan/check_layout.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <map>
#include <regex>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

} // namespace

TEST_CASE("the store is laid without a fault") {
    CHECK(codes(store_design()).empty());
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

namespace {

/// The design with every `key = "length"` of an example set in its dome or, behind [course], there.
Design with_example(Design design, const std::string& example) {
    Dome& dome = design.domes[0];
    const std::regex pair("([a-z_]+) = \"([^\"]+)\"");
    int count = 0;
    for (std::sregex_iterator at(example.begin(), example.end(), pair), end; at != end; ++at) {
        const std::string key = (*at)[1];
        if (key == "kind")
            continue;
        const LengthReading value = read_length((*at)[2].str(), design.unit);
        REQUIRE(value.fault == "");
        ++count;
        if (key == "inside_diameter")
            dome.inside_diameter = value.value;
        else if (key == "springline")
            dome.springline = value.value;
        else if (key == "rise")
            dome.profile.rise = value.value;
        else if (key == "diameter")
            dome.top.diameter = value.value;
        else if (key == "least_inside_radius")
            design.course.least_inside_radius = value.value;
        else if (key == "height" && example.find("[course]") == 0)
            design.course.height = value.value;
        else
            FAIL("no such key: " << key);
    }
    REQUIRE(count > 0);
    return design;
}

} // namespace

TEST_CASE("the example value of a dome without a ring, or with too many courses, works") {
    std::map<std::string, int> mended;
    for (std::uint64_t seed = 1; seed <= 500; ++seed) {
        Dice dice(seed);
        Design design = store_design();
        design.openings.clear();
        design.unit = dice.chance(0.5) ? DisplayUnit::feet : DisplayUnit::metres;
        design.tubes[0].lay_flat = dice.between(0.3, 0.6);
        design.tubes[0].tamped_width.reset();
        design.course.height = dice.between(0.04, 0.12);
        Dome& dome = design.domes[0];
        dome.datum.clear();
        const bool small = dice.chance(0.5);
        dome.inside_diameter = small ? dice.between(0.5, 1) : dice.between(8, 30);
        dome.springline = dice.chance(0.5) ? 0 : small ? dice.between(0, 1) : dice.between(0, 20);
        dome.profile = {};
        dome.profile.kind = dice.chance(0.3)   ? ProfileKind::round
                            : dice.chance(0.5) ? ProfileKind::pointed
                                               : ProfileKind::catenary;
        if (dome.profile.kind != ProfileKind::round)
            dome.profile.rise = dome.inside_diameter * dice.between(0.5, 3);
        if (dice.chance(0.4)) {
            dome.top.kind = TopKind::skylight;
            dome.top.diameter = dome.inside_diameter * dice.between(0.3, 0.99);
        }
        if (dice.chance(0.4))
            design.course.least_inside_radius = dice.between(0.1, 0.6);
        const auto faults = check_layout(design);
        if (faults.empty() || faults[0].code == "dome-below-floor")
            continue;
        CAPTURE(seed, faults[0].code, faults[0].message, faults[0].example);
        REQUIRE((faults[0].code == "dome-without-ring" || faults[0].code == "too-many-courses"));
        CHECK(check_layout(with_example(design, faults[0].example)).empty());
        ++mended[faults[0].code];
    }
    CHECK(mended["dome-without-ring"] > 30);
    CHECK(mended["too-many-courses"] > 30);
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

TEST_CASE("tunnels must be longer, lower and narrower than their domes") {
    Design design = store_design();
    const Tunnel tunnel = porch();
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
    const Buttress buttress = flank();
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
    // On the base ring, at 69 in, their corners stand 2 (69 sin(turn / 2) - 15 cos(turn / 2))
    // apart: 0.6 in, then 3.0 in. Less than 50 mm is a slit that no hand gets into.
    CHECK(with([](Buttress& b) { b.bearings = {60, 85}; }) == Codes{"elements-meet"});
    CHECK(with([](Buttress& b) { b.bearings = {60, 87}; }).empty());
    CHECK(with([](Buttress& b) {
              b.height = 200 * inch;
              b.projection_top = 0;
          }) == Codes{"buttress-too-high"});
}

TEST_CASE("unsound elements are skipped and the rest is still judged") {
    Design design = store_design();
    design.openings.push_back(opening("win", 170, 24 * inch, 0, 30 * inch, HeadKind::square));
    design.openings.push_back(opening("bad", 20, 500 * inch, 0, 30 * inch, HeadKind::square));
    design.openings.back().sound = design.openings.back().itself_sound = false;
    CHECK(codes(design) == Codes{"openings-overlap"});
    design.domes[0].sound = false; // by its tube
    CHECK(codes(design).empty());
    design.openings.back().itself_sound = true;
    CHECK(codes(design) == Codes{"opening-too-wide"});
    design.domes[0].itself_sound = false;
    CHECK(codes(design).empty());
}

TEST_CASE("a lower tube is no narrower than the one above and ends below the last ring") {
    Design design = store_design();
    TubeType wide = design.tubes[0];
    wide.id = "wide";
    wide.lay_flat = 22 * inch;
    wide.tamped_width = 19 * inch;
    TubeType thin = wide;
    thin.id = "thin";
    thin.tamped_width = 12 * inch;
    design.tubes.push_back(wide);
    design.tubes.push_back(thin);
    Dome& dome = design.domes[0];
    dome.lower_tube = "wide";
    dome.lower_height = 40 * inch;
    CHECK(codes(design).empty());
    dome.lower_tube = "thin";
    CHECK(codes(design) == Codes{"lower-tube-narrower"});
    dome.lower_tube = "wide";
    dome.lower_height = 140 * inch;
    CHECK(codes(design) == Codes{"lower-tube-too-high"});
    dome.lower_height = 40 * inch;
    dome.second_wythe = 20 * inch;
    CHECK(codes(design).empty());
    dome.second_wythe = 140 * inch;
    CHECK(codes(design) == Codes{"wythe-too-high"});
}
