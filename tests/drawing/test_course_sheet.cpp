// A course's sheet as a crew reads it: type apart from the big figures, words for what rounds to
// nothing, what to do afterwards and what to have ready.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/placer.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

const Sheet& sheet_titled(const std::vector<Sheet>& book, const std::string& title) {
    const auto found = std::find_if(book.begin(), book.end(),
                                    [&](const Sheet& sheet) { return sheet.title == title; });
    REQUIRE(found != book.end());
    return *found;
}

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

} // namespace

TEST_CASE("No text stands within 1.5 mm of the big figures") {
    const MeasureText measure = pango_measure();
    for (const BuildingPlan& plan : {demo_plan("grain-store"), pair_plan()})
        for (const Sheet& sheet : crew_book(plan, letter_paper(), measure)) {
            if (!has(sheet.title, "Course "))
                continue;
            CAPTURE(sheet.title);
            const std::vector<const TextItem*> texts = text_items(sheet);
            for (const TextItem* big : texts)
                for (const TextItem* other : texts)
                    if (big != other && big->size >= 10)
                        CHECK_FALSE(
                            overlap(grown(corners(*big, measure), 1.5), corners(*other, measure)));
        }
}

TEST_CASE("What rounds to nothing is said in words") {
    // Course 8 of the store, the first of the curve, steps in by 0.02 in and leans as little.
    const std::vector<Sheet> book =
        crew_book(demo_plan("grain-store"), letter_paper(), pango_measure());
    const std::string text = all_text(sheet_titled(book, "Course 8"));
    CHECK(has(text, "Step-in from course 7 under 1/8 in"));
    CHECK(has(text, "arm: no change"));
    CHECK_FALSE(has(text, " 0 in"));
}

TEST_CASE("Lengths to have ready are rounded up") {
    CHECK(supply_text(64.1 * 0.3048, DisplayUnit::feet) == "65 ft");
    CHECK(supply_text(64 * 0.3048, DisplayUnit::feet) == "64 ft");
    CHECK(supply_text(24.51, DisplayUnit::metres) == "24.6 m");
    CHECK(supply_text(24.5, DisplayUnit::metres) == "24.5 m");
}

TEST_CASE("The sheet before a form is set says to have it ready") {
    const BuildingPlan plan = demo_plan("grain-store");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    CHECK(has(all_text(sheet_titled(book, "Course 10")),
              "Have ready for course 11: form of 'east', form of 'west'"));
    CHECK_FALSE(has(all_text(sheet_titled(book, "Course 9")), "Have ready"));
    CHECK(has(all_text(sheet_titled(book, "Course 9")), "Wire laid."));
    // No course lies on the last: no wire.
    CHECK_FALSE(has(all_text(sheet_titled(book, "Course 30, cap")), "Wire laid."));
}

TEST_CASE("Each sheet of a course on several says in its head which it is, and that it goes on") {
    int continued = 0;
    for (const char* name : {"square-door", "retreat"}) {
        CAPTURE(name);
        const std::vector<Sheet> book = crew_book(demo_plan(name), letter_paper(), pango_measure());
        for (std::size_t i = 0; i < book.size(); ++i) {
            if (!has(book[i].title, "Course ") || has(book[i].title, "continued"))
                continue;
            CAPTURE(book[i].title);
            std::size_t of = 1;
            while (i + of < book.size() && book[i + of].title == book[i].title + ", continued")
                ++of;
            CHECK(has(all_text(book[i]), "GOES ON") == (of > 1));
            for (std::size_t k = 0; of > 1 && k < of; ++k) {
                const std::string head = std::to_string(k + 1) + " of " + std::to_string(of);
                CHECK(has(all_text(book[i + k]), head + (k + 1 < of ? ": GOES ON" : "")));
                ++continued;
            }
        }
    }
    CHECK(continued > 2);
}

TEST_CASE("A sleeve in a tunnel's wall has its row, its wall and its place along the axis") {
    const BuildingPlan plan = demo_plan("retreat");
    const std::vector<Sheet> book = crew_book(plan, letter_paper(), pango_measure());
    int sleeves = 0;
    for (const SleevePlan& sleeve : plan.schedule.sleeves) {
        if (!sleeve.form.in_tunnel)
            continue;
        ++sleeves;
        const CourseSheets sheets =
            sheets_of_course(book, sleeve.set_before_course, sleeve.form.in);
        std::string text;
        for (const Sheet* sheet : sheets.sheets)
            text += all_text(*sheet) + " ";
        CAPTURE(text);
        CHECK(has(text, "Along the axis from"));
        CHECK(has(text, sleeve.form.id + " " + word(sleeve.form.side) + " " +
                            length_text(sleeve.form.along, plan.schedule.unit)));
        CHECK(has(text, "from the pole of '"));
        // Its row and its name in the plan.
        int named = 0;
        for (const Sheet* sheet : sheets.sheets)
            named += count_of(*sheet, sleeve.form.id);
        CHECK(named == 2);
    }
    CHECK(sleeves > 0);
}

TEST_CASE("The rod of a dome under a skylight has no mark for the apex in the air") {
    for (const bool closed : {true, false}) {
        std::string rod;
        for (const Sheet& sheet : crew_book(demo_plan(closed ? "grain-store" : "cabin-metric"),
                                            letter_paper(), pango_measure()))
            if (has(sheet.title, "Story rod"))
                rod += all_text(sheet);
        CHECK(has(rod, "apex") == closed);
    }
}
