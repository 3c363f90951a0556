// Plumb reveals: jambs and heads built out to the plane of the base ring's outside.
#include "geometry/plan/reveal_form.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/plan_building.hpp"
#include "tests/plan/layout_codes.hpp"
#include "tests/support/designs.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

/// The store (inside radius 54, tube 15, springline 20, arc radius 135, in inches) with a pointed
/// window 24 wide from 40 to 80 above the floor.
Design store_with_window(bool plumb) {
    Design design = store_design();
    Opening window = opening("window", 300, 24 * inch, 40 * inch, 40 * inch, HeadKind::pointed);
    window.head.rise = 24 * inch;
    window.use = OpeningUse::window;
    window.frame_depth = 4.5 * inch;
    window.reveal_plumb = plumb;
    design.openings.push_back(window);
    return design;
}

/// Area between a circle of radius r about the pole and the plane x = plane, where from <= y <= to.
double beyond_circle(double r, double plane, double from, double to) {
    const auto quarter = [&](double y) {
        return (y * std::sqrt(r * r - y * y) + r * r * std::asin(y / r)) / 2;
    };
    return plane * (to - from) - (quarter(to) - quarter(from));
}

const ButtressForm& reveal_of(const Schedule& schedule) {
    for (const ButtressForm& pier : schedule.building.buttresses)
        if (pier.reveal)
            return pier;
    throw std::logic_error("no reveal");
}

} // namespace

TEST_CASE("a plumb reveal adds two strips between the leaning ring and the base ring's plane") {
    const Schedule plain = lay(store_with_window(false)), built = lay(store_with_window(true));
    const ButtressForm& reveal = reveal_of(built);
    const double a = 12 * inch, w = 15 * inch, plane = 69 * inch;
    CHECK(outer_face(reveal, 1.0) == Approx(plane));
    int jambs = 0, aprons = 0, heads = 0, crowns = 0;
    for (std::size_t i = 0; i < built.courses.size(); ++i) {
        const Course& course = built.courses[i];
        CAPTURE(course.number);
        const double z = course.middle;
        const double added = course.wall_area - plain.courses[i].wall_area;
        // Two-centred arc of radius 135 about points 81 beyond the pole.
        const double lean = std::max(0.0, z / inch - 20);
        const double r = (std::sqrt(135 * 135 - lean * lean) - 81 + 15) * inch;
        if (z < reveal.bottom || z > reveal.top) {
            CHECK(added == Approx(0).margin(1e-12));
            continue;
        }
        if (z < 40 * inch) {
            ++aprons;
            CHECK(added == Approx(2 * beyond_circle(r, plane, 0, a + w)).epsilon(1e-9));
        } else if (z < 56 * inch) {
            ++jambs;
            CHECK(added == Approx(2 * beyond_circle(r, plane, a, a + w)).epsilon(1e-9));
        } else if (z < 80 * inch) {
            ++heads;
            // Half-span 12, rise 24: arc radius (144 + 576) / 24 = 30.
            const double y = z / inch - 56;
            double half = (std::sqrt(30 * 30 - y * y) - 18) * inch;
            const double outer = half + w;
            if (2 * half < 5 * inch)
                half = 0; // laid over
            CHECK(added == Approx(2 * beyond_circle(r, plane, half, outer)).epsilon(1e-9));
        } else {
            ++crowns;
            CHECK(added > 0);
        }
        double laid = 0;
        for (const Straight& straight : course.straights) {
            REQUIRE(straight.of == "window-reveal");
            CHECK((straight.end - straight.start).norm() == Approx(straight.length));
            laid += straight.length;
        }
        if (z > 40 * inch && z < 56 * inch)
            CHECK(laid ==
                  Approx(2 * (plane - std::sqrt(r * r - (a + w / 2) * (a + w / 2)))).epsilon(1e-9));
        CHECK(laid > 0);
    }
    CHECK(aprons >= 2);
    CHECK(jambs == 3);
    CHECK(heads == 5);
    CHECK(crowns >= 1);
}

TEST_CASE("a plumb reveal butts against the ring, which runs on behind it") {
    const Schedule plain = lay(store_with_window(false)), built = lay(store_with_window(true));
    for (std::size_t i = 0; i < built.courses.size(); ++i) {
        CAPTURE(i);
        REQUIRE(built.courses[i].rings.size() == plain.courses[i].rings.size());
        for (std::size_t k = 0; k < built.courses[i].rings.size(); ++k) {
            const Ring& p = plain.courses[i].rings[k];
            const Ring& q = built.courses[i].rings[k];
            REQUIRE(p.cuts.size() == q.cuts.size());
            CHECK(p.fill_volume == q.fill_volume);
        }
    }
}

TEST_CASE("the crew is told where a reveal starts and how far out it goes") {
    const Schedule built = lay(store_with_window(true));
    // The outside leans in by more than 5 mm from y^2 / 270 > 0.2 in, 7.3 in above the springline:
    // from the joint at 30 in, the foot of course 10.
    const auto& notes = built.courses.at(9).before;
    CHECK(std::any_of(notes.begin(), notes.end(), [](const SetNote& note) {
        return note.element == "window" && note.what == "reveal" &&
               note.text.find("out to 5 ft 9 in") != std::string::npos;
    }));
}

TEST_CASE("a plumb frame finds its band in a plumb reveal, and its form reaches through it") {
    const Schedule plain = lay(store_with_window(false)), built = lay(store_with_window(true));
    const auto window = [](const Schedule& schedule) {
        return *std::find_if(schedule.openings.begin(), schedule.openings.end(),
                             [](const OpeningPlan& o) { return o.form.id == "window"; });
    };
    // At 42.5 in, its first course: 54 - (135 - sqrt(135^2 - 22.5^2)) = 52.11 in.
    CHECK(window(built).frame_band_start ==
          Approx((std::sqrt(135 * 135 - 22.5 * 22.5) - 81) * inch));
    CHECK(window(built).frame_band_end == Approx(69 * inch));
    CHECK(window(plain).frame_band_end < 60 * inch);
    CHECK(window(built).least_form_depth - window(plain).least_form_depth ==
          Approx(69 * inch - (std::sqrt(135 * 135 - 22.5 * 22.5) - 66) * inch));
    CHECK(window(plain).rained_on > 0);
    CHECK(window(built).rained_on == 0);
}

TEST_CASE("the remedy of a frame that is deeper than its band holds: a plumb reveal") {
    const auto has = [](const BuildingPlan& plan) {
        REQUIRE(plan.diagnostics.empty());
        return std::any_of(plan.findings.begin(), plan.findings.end(), [](const Finding& f) {
            return f.code == "frame-deeper-than-band" && f.subject == "opening.window";
        });
    };
    CHECK(has(plan_building(store_with_window(false), {})));
    CHECK_FALSE(has(plan_building(store_with_window(true), {})));
}

TEST_CASE("where the wall stands plumb up to the head a reveal changes nothing") {
    Design design = store_with_window(true);
    design.openings.back().sill = 0;
    design.openings.back().height = 20 * inch;
    design.openings.back().head.rise = 12 * inch;
    const Schedule built = lay(design);
    design.openings.back().reveal_plumb = false;
    CHECK(built.building.buttresses.empty());
    CHECK(built.totals.wall_volume == lay(design).totals.wall_volume);
}

TEST_CASE("reveals that cannot be laid are refused") {
    const auto code = [](auto change) {
        Design design = store_with_window(true);
        change(design);
        const auto found = codes(design);
        return found.empty() ? std::string() : found.front();
    };
    CHECK(code([](Design&) {}) == "");
    CHECK(code([](Design& d) { d.openings.back().head.kind = HeadKind::square; }) ==
          "reveal-unsuited");
    CHECK(code([](Design& d) {
              d.openings.back().height = 37 * inch; // springs on a joint
              d.openings.back().head.kind = HeadKind::round;
              d.openings.back().head.laid = HeadLaid::fan;
          }) == "reveal-unsuited");
    CHECK(code([](Design& d) {
              d.openings.back().use = OpeningUse::niche;
              d.openings.back().niche_depth = 6 * inch;
          }) == "reveal-unsuited");
    // Head at 115 in, the last ring ends at 125 in: four courses of crown end at 135 in.
    CHECK(code([](Design& d) {
              d.openings.back().width = 10 * inch;
              d.openings.back().head.rise = 10 * inch;
              d.openings.back().height = 75 * inch;
          }) == "reveal-too-high");
    CHECK(code([](Design& d) {
              Buttress pier = flank();
              pier.bearings = {324};
              pier.width = 15 * inch;
              pier.height = 60 * inch;
              d.buttresses.push_back(pier);
          }) == "elements-meet");
}
