// Advice on buttresses, joins, tunnels, fans and heads that take rain: each fails a design, and
// holds once its remedy is applied.
#include "geometry/plan/practice.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

std::optional<Finding> find(const Design& design, const std::string& code) {
    const auto findings = practice_findings(design, lay(design));
    const auto found = std::find_if(findings.begin(), findings.end(),
                                    [&](const Finding& finding) { return finding.code == code; });
    if (found == findings.end())
        return std::nullopt;
    CHECK(found->verdict == Verdict::advice);
    CHECK_FALSE(found->source.empty());
    CHECK_FALSE(found->remedy.empty());
    CHECK(found->message.find("safe") == std::string::npos);
    return *found;
}

bool offers(const Finding& finding, double metres) {
    return finding.remedy.find(length_text(metres, DisplayUnit::feet)) != std::string::npos;
}

/// The store with a round window of this width whose fan springs at 30 in.
Design with_fan(double width) {
    Design design = store_design();
    Opening window = opening("win", 330, width, 20 * inch, 10 * inch + width / 2, HeadKind::round);
    window.head.laid = HeadLaid::fan;
    design.openings.push_back(window);
    return design;
}

} // namespace

TEST_CASE("a buttress that ends less than 18 in above the springline: common practice, no source") {
    Design design = store_with_porch(); // springline 20 in, piers of 40 in
    CHECK_FALSE(find(design, "buttress-low"));
    design.domes[0].springline = 22 * inch;
    CHECK_FALSE(find(design, "buttress-low"));
    design.domes[0].springline = 22.1 * inch;
    const auto low = find(design, "buttress-low");
    REQUIRE(low);
    CHECK(low->subject == "buttress.flank"); // once for its two piers
    CHECK(low->value.value() == Approx(40 * inch));
    CHECK(low->limit.value() == Approx(40.1 * inch));
    REQUIRE(offers(*low, 45 * inch));
    design.buttresses[0].height = 45 * inch;
    CHECK_FALSE(find(design, "buttress-low"));
    design.buttresses[0].height = 10 * inch;
    CHECK(find(design, "buttress-low")->message.find("below") != std::string::npos);
}

TEST_CASE("joined domes need a cricket where their outsides part, and others none") {
    for (const std::string keep : {"", "store", "store2"}) {
        CAPTURE(keep);
        const double apart = 90 * inch;
        const auto found = find(two_stores(apart, keep), "join-needs-cricket");
        REQUIRE(found);
        CHECK(found->subject == "join.both");
        // Each outside is 45 in from its pole there: x = 30 of an arc of 135 in, 81 beyond the
        // pole.
        CHECK(found->value.value() / inch ==
              Approx(20 + std::sqrt(135.0 * 135 - 111.0 * 111)).margin(1e-6));
        CHECK(found->remedy.find("outlet") != std::string::npos);
    }
    CHECK_FALSE(find(store_with_porch(), "join-needs-cricket"));
}

TEST_CASE("a tunnel over 4 ft wide is laid as a fan over its form: a judgement") {
    Design design = store_with_porch();
    design.tunnels[0].width = 48 * inch;
    CHECK_FALSE(find(design, "tunnel-wide"));
    design.tunnels[0].width = 48.1 * inch;
    const auto found = find(design, "tunnel-wide");
    REQUIRE(found);
    CHECK(found->value.value() == Approx(48.1 * inch));
    CHECK(offers(*found, 48 * inch));
}

TEST_CASE("fan bags under 4 in at the form are thin, and the depth that is offered thickens them") {
    // Half-width 6.5 in, depth and tube 15: outer arc 67.5, 5 bags of 20.4 / 5 = 4.08 in; of 6
    // in: 65.97, 5 bags of 18.85 / 5 = 3.77.
    CHECK_FALSE(find(with_fan(13 * inch), "fan-bags-thin"));
    Design thin = with_fan(12 * inch);
    const auto found = find(thin, "fan-bags-thin");
    REQUIRE(found);
    CHECK(found->value.value() / inch == Approx(pi * 6 / 5));
    CHECK(found->limit.value() == Approx(4 * inch));
    // 3 bags where the outer arc is under 4 tubes: pi (6 + d) < 60.
    REQUIRE(offers(*found, 13 * inch));
    thin.openings[1].head.depth = 13 * inch;
    CHECK_FALSE(find(thin, "fan-bags-thin"));
}

TEST_CASE("a head that leans in over its sill takes rain: drip and sloped sill on the sheet") {
    Design design = store_design();
    const Schedule schedule = lay(design);
    const auto found = find(design, "head-takes-rain");
    REQUIRE(found);
    // At the head, 60 in above the springline: sqrt(135^2 - 60^2) - 81 = 39.93 of 54 in.
    CHECK(found->value.value() / inch ==
          Approx(54 - (std::sqrt(135.0 * 135 - 60.0 * 60) - 81)).margin(1e-3));
    const OpeningPlan& door = schedule.openings.at(0);
    const auto told = [&](const std::vector<SetNote>& notes, const std::string& what) {
        return std::any_of(notes.begin(), notes.end(), [&](const SetNote& note) {
            return note.element == "door" && note.what == what;
        });
    };
    CHECK(told(schedule.courses.at(static_cast<std::size_t>(door.strike_after_course) - 1).after,
               "sill"));
    CHECK(told(schedule.courses.at(static_cast<std::size_t>(door.last_course) - 1).after, "drip"));
    REQUIRE(offers(*found, 80 * inch));
    design.domes[0].springline = 80 * inch;
    CHECK_FALSE(find(design, "head-takes-rain"));
    for (const Course& course : lay(design).courses) {
        CHECK_FALSE(told(course.after, "sill"));
        CHECK_FALSE(told(course.after, "drip"));
    }
    // A niche has no outside.
    Design niche = store_design();
    niche.openings[0].use = OpeningUse::niche;
    niche.openings[0].niche_depth = 8 * inch;
    CHECK_FALSE(find(niche, "head-takes-rain"));
}

TEST_CASE(
    "in a tunnel a window's head takes rain in a side that leans, in the plumb end wall none") {
    Design design = store_design();
    design.tunnels = {porch()}; // springs at 45 in
    design.tunnels[0].reach = 160 * inch;
    design.tunnels[0].end_wall = true;
    design.openings[0].sill = 0;
    design.domes[0].springline = 80 * inch; // the door's head is plumb
    design.openings.push_back(in_porch("win", TunnelSide::left, 110 * inch, 16 * inch, 20 * inch,
                                       35 * inch, HeadKind::square));
    const auto found = find(design, "head-takes-rain");
    REQUIRE(found);
    CHECK(found->subject == "opening.win");
    // 10 in above the springing: an arc of 45 in about 27 in beyond the axis.
    CHECK(found->value.value() / inch ==
          Approx(18 - (std::sqrt(45.0 * 45 - 10.0 * 10) - 27)).margin(1e-3));
    design.openings.back().height = 25 * inch;
    CHECK_FALSE(find(design, "head-takes-rain"));
    design.openings.back() =
        in_porch("win", TunnelSide::end, 0, 16 * inch, 20 * inch, 35 * inch, HeadKind::square);
    CHECK_FALSE(find(design, "head-takes-rain"));
}

TEST_CASE("the last form of a dome stays until it is closed, or the curb ties its eye") {
    Design design = store_design();
    design.openings.push_back(
        opening("win", 330, 20 * inch, 40 * inch, 30 * inch, HeadKind::pointed));
    design.openings.push_back(
        opening("low", 60, 20 * inch, 20 * inch, 20 * inch, HeadKind::square));
    for (const bool closed : {true, false}) {
        CAPTURE(closed);
        if (!closed) {
            design.domes[0].top.kind = TopKind::skylight;
            design.domes[0].top.diameter = 40 * inch;
        }
        const Schedule schedule = lay(design);
        const DomeForm& dome = schedule.building.domes.at(0);
        int last_forms = 0;
        for (const OpeningPlan& opening : schedule.openings) {
            last_forms += opening.last_form;
            // The door's head, at 80 in, is the highest.
            CHECK(opening.last_form == (opening.form.id == "door"));
            if (opening.last_form) {
                CHECK(opening.strike_after_course ==
                      (closed ? schedule.totals.courses : dome.last_ring + 1));
                for (int n = opening.last_course; n < opening.strike_after_course; ++n) {
                    const auto& notes = schedule.courses.at(static_cast<std::size_t>(n) - 1).after;
                    CHECK(std::any_of(notes.begin(), notes.end(), [](const SetNote& note) {
                        return note.element == "door" && note.what == "form stays";
                    }));
                }
            } else {
                CHECK(opening.strike_after_course <= opening.last_course + 3);
            }
        }
        CHECK(last_forms == 1);
    }
}

TEST_CASE("an opening of a tunnel looks into the open as one of a dome does") {
    Design design = store_design();
    design.tunnels = {porch()};
    design.tunnels[0].bearing = {0};
    design.tunnels[0].reach = 160 * inch;
    design.openings.push_back(in_porch("win", TunnelSide::right, 115 * inch, 16 * inch, 20 * inch,
                                       20 * inch, HeadKind::square));
    CHECK(codes(design).empty());
    Dome other = design.domes[0];
    other.id = "other";
    other.datum.clear();
    design.domes.push_back(other);
    // From the tunnel's axis: 33 in of half tunnel, 1.5 m, 69 in to the other dome's pole.
    design.domes[1].at = {102 * inch + 1.49, 115 * inch};
    CHECK(codes(design) == Codes{"opening-blocked"});
    design.domes[1].at = {102 * inch + 1.51, 115 * inch};
    CHECK(codes(design).empty());
    // Before the end wall: its outer face is at the reach.
    design.tunnels[0].end_wall = true;
    design.openings.back() =
        in_porch("win", TunnelSide::end, 0, 16 * inch, 20 * inch, 20 * inch, HeadKind::square);
    design.domes[1].at = {0, 160 * inch + 69 * inch + 1.49};
    CHECK(codes(design) == Codes{"opening-blocked"});
    design.domes[1].at = {0, 160 * inch + 69 * inch + 1.51};
    CHECK(codes(design).empty());
}
