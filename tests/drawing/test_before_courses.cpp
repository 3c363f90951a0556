// What stands before the sheets of the courses: cover, what to know before the start, compass
// table, story rod.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <map>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

constexpr double inch = metres_per_inch;

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("What was fitted stands on the cover, and how the datum is set") {
    const BuildingPlan plan = demo_plan("washroom");
    REQUIRE_FALSE(plan.schedule.fitted.empty());
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    const std::string cover = all_text(book.front());
    for (const Fitted& fitted : plan.schedule.fitted)
        CHECK(has(cover, "Fitted: " + fitted.text.substr(0, 40)));
    std::string start;
    for (const Sheet& sheet : book)
        if (has(sheet.title, "Before you start"))
            start += all_text(sheet);
    CHECK(has(start, "Datum mark"));
    CHECK(has(start, "stake"));
    CHECK(has(start, "guy it"));
    CHECK(has(start, "bench mark"));
}

TEST_CASE("The form of the store's door is as deep as its leaning courses ask") {
    // Reckoned by hand for a dome of 9 ft, 15 in tubes and a door 32 by 80 in whose pointed head
    // rises 24 in: the innermost corner of its courses lies 40.9 in from the pole, the outermost 69
    // in, and 50 mm are added: 30.1 in.
    Design design = demo_plan("grain-store").design;
    for (Opening& opening : design.openings)
        if (opening.id == "door")
            opening.head.rise = 24 * inch;
    const BuildingPlan plan = plan_building(design, {});
    REQUIRE(plan.sound());
    std::string start;
    for (const Sheet& sheet : crew_book(plan, letter_paper(), pango_measure()))
        if (has(sheet.title, "Before you start"))
            start += all_text(sheet);
    CHECK(has(start, "door 2 ft 8 in 6 ft 8 in pointed, rise 2 ft 0 in 0 in 2 ft 6-1/8 in"));
}

TEST_CASE("The story rod marks the top of every course, sills, heads and springlines") {
    const BuildingPlan plan = demo_plan("grain-store");
    std::string rod;
    std::map<std::string, double> height_of; // mark -> y of the text on its page
    for (const Sheet& sheet : crew_book(plan, letter_paper(), pango_measure()))
        if (has(sheet.title, "Story rod"))
            rod += all_text(sheet);
    for (const Course& course : plan.schedule.courses)
        CHECK(has(rod, rod_text(course.top, plan.schedule.unit) + " Top of course " +
                           std::to_string(course.number)));
    CHECK(has(rod, "Underside of course 1"));
    CHECK(has(rod, "BENCH MARK"));
    CHECK(has(rod, "springline"));
    for (const OpeningPlan& opening : plan.schedule.openings)
        CHECK(has(rod, "'" + opening.form.id + "'"));
}

TEST_CASE("The table of courses gives every setting") {
    for (const BuildingPlan& plan : several_plans()) {
        std::string table;
        for (const Sheet& sheet : crew_book(plan, a4_paper(), pango_measure()))
            if (has(sheet.title, "Compass table"))
                table += all_text(sheet);
        CAPTURE(plan.schedule.name, table);
        if (plan.schedule.name.size() < 40) // a longer name is cut short
            CHECK_FALSE(has(table, "…"));
        for (const Course& course : plan.schedule.courses)
            for (const Ring& ring : course.rings) {
                if (ring.kind == RingKind::cap)
                    continue;
                CAPTURE(course.number, ring.dome, table);
                CHECK(has(table, " " + length_text(ring.inside_radius, plan.schedule.unit) + " "));
                const bool chain = plan.design.compass.arm == CompassArm::chain;
                if (chain)
                    CHECK(has(table, " " + length_text(ring.chain, plan.schedule.unit) + " "));
                if (chain && plan.design.compass.pole_diameter > 0)
                    CHECK(has(table, " " + length_text(ring.chain_face, plan.schedule.unit) + " "));
                if (!chain && plan.design.compass.pole_diameter > 0)
                    CHECK(has(table, " " + length_text(ring.pole_face, plan.schedule.unit) + " "));
            }
    }
}

TEST_CASE(
    "What fails and what the checks ask of the crew stands before the start, no other advice") {
    const BuildingPlan plan = demo_plan("grain-store");
    Finding buttress, light, held, shape;
    buttress.code = "buttress-at-opening";
    buttress.verdict = Verdict::advice;
    buttress.message = "No pier braces the door.";
    buttress.remedy = "Add a pier of 15 in.";
    light.code = "room-light";
    light.verdict = Verdict::fails;
    light.message = "Windows give too little light.";
    light.remedy = "Make them wider.";
    shape = light;
    shape.verdict = Verdict::advice;
    shape.message = "The room is low.";
    held.code = "wire-strands";
    held.verdict = Verdict::holds;
    held.message = "Every joint has wire.";
    const auto start_of = [&](const std::vector<Finding>& findings) {
        std::string start;
        for (const Sheet& sheet : crew_book(plan, letter_paper(), pango_measure(), findings))
            if (has(sheet.title, "Before you start"))
                start += all_text(sheet);
        return start;
    };
    const std::string start = start_of({light, buttress, held, shape});
    CHECK(has(start, "What the checks ask of you"));
    CHECK(has(start, "No pier braces the door. Ask whoever drew the design for a buttress"));
    CHECK(has(start, "CHECKS THAT FAIL: 1"));
    CHECK(has(start, "too little light"));
    CHECK_FALSE(has(start, "Make them wider")); // the designer's to do
    CHECK_FALSE(has(start, "The room is low"));
    CHECK_FALSE(has(start, "Every joint has wire"));
    CHECK_FALSE(has(start_of({light, held}), "What the checks ask"));
}

TEST_CASE("What the crew is told before the start has no key of the design file in it") {
    for (const char* code : {"base-courses", "buttress-at-opening", "frame-deeper-than-band",
                             "frost-depth", "lintel-rest", "wire-strands"}) {
        Finding finding;
        finding.code = code;
        finding.verdict = Verdict::advice;
        finding.message = "It does not hold.";
        finding.remedy = "Add a [key] with on = \"a\".";
        const std::vector<std::string> asked = asked_of_crew({finding});
        CAPTURE(code);
        REQUIRE(asked.size() == 1);
        CHECK(asked[0].find_first_of("[=") == std::string::npos);
        CHECK(asked[0].size() > finding.message.size() + 10);
    }
}

TEST_CASE("Under a segment the full width ends below where the head springs") {
    // Where the profile moved in by plaster and frame leaves less than the clear width, reckoned on
    // paper: with rho = (a^2 + h^2) / 2h the segment's radius and p what plaster and frame take,
    // the clear head is a circle of rho - p about the same centre, h - rho over the springing.
    for (const auto& [name, door] :
         {std::pair{"workshop", "door"}, std::pair{"cabin-metric", "door"},
          std::pair{"square-door", "high"}}) {
        CAPTURE(name, door);
        const BuildingPlan plan = demo_plan(name);
        const std::string start = all_text(crew_book(plan, letter_paper(), pango_measure())[1]);
        const auto& openings = plan.schedule.openings;
        const auto found =
            std::find_if(openings.begin(), openings.end(),
                         [&](const OpeningPlan& one) { return one.form.id == door; });
        REQUIRE(found != openings.end());
        REQUIRE(found->form.head_kind == HeadKind::segmental);
        const double a = found->form.half_width, h = found->form.top - found->form.springing;
        const double rho = (a * a + h * h) / (2 * h), p = found->frame_inset + found->frame_width;
        const double half = found->clear_width / 2;
        CHECK(half == Approx(a - p));
        const double up = std::sqrt((rho - p) * (rho - p) - half * half) + h - rho;
        CHECK(up < 0);
        const double bottom = found->form.sill + (found->form.use == OpeningUse::door ? 0 : p);
        CHECK(has(start, length_text(found->form.springing + up - bottom, plan.schedule.unit)));
    }
}

TEST_CASE("A cap's row of the compass table gives the disc's width, a step too small its bound") {
    const BuildingPlan plan = demo_plan("grain-store");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    const auto table = std::find_if(book.begin(), book.end(), [](const Sheet& sheet) {
        return has(all_text(sheet), "Compass table");
    });
    REQUIRE(table != book.end());
    const std::string text = all_text(*table);
    int caps = 0, small = 0;
    for (const Course& course : plan.schedule.courses) {
        const Ring& ring = course.rings[0];
        if (ring.kind == RingKind::cap) {
            ++caps;
            CHECK(has(text, length_text(2 * ring.outside_radius, DisplayUnit::feet) + " across"));
        } else if (ring.step_in > 5e-5 && ring.step_in < 0.0254 / 16) {
            ++small;
        }
    }
    CHECK(caps >= 2);
    CHECK(has(text, "under 1/8 in") == (small > 0));
    CHECK(small > 0);
}
