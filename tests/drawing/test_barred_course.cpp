// A course that finds nothing to rest on: its sheet forbids it, and the book says before it that a
// check fails.
#include "exporters/pdf.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/drawing/barred_course.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace coilwright;
using namespace coilwright::testing;
using Catch::Matchers::Contains;

namespace {

/// A half globe of 5 m in courses of 150 mm. By hand: r = sqrt(2500^2 - y^2) mm at mid-height y
/// above the springline; course 29 has y 2325, r 919; course 30 y 2475, r 353; course 31 y 2625,
/// past the apex, is the cap. So course 30 steps in 566 mm with a tube of 485.
BuildingPlan flat_crown() {
    DesignReading reading = read_design(R"(coilwright = 1
name = "Half globe"
unit = "m"
[course]
height = "150 mm"
[tube.wall]
lay_flat = "560 mm"
tamped_width = "485 mm"
[dome.main]
inside_diameter = "5 m"
springline = "1500 mm"
profile = { kind = "round" }
tube = "wall"
)");
    BuildingPlan plan = plan_building(std::move(reading.design), std::move(reading.diagnostics));
    REQUIRE(plan.sound());
    return plan;
}

} // namespace

TEST_CASE("the sheet of a course without bearing forbids it in the largest type, and those above") {
    const BuildingPlan plan = flat_crown();
    const MeasureText measure = pango_measure();
    const std::vector<Sheet> book = crew_book(plan, a4_paper(), measure, plan.findings);
    for (const Course& course : plan.schedule.courses) {
        const CoursePart part = *part_in(plan.schedule, course.number, "main");
        CAPTURE(course.number);
        const int first = barred_from(plan, part);
        CHECK(first == (course.number >= 30 ? 30 : 0));
        const CourseSheets sheets = sheets_of_course(book, course.number, "");
        REQUIRE_FALSE(sheets.sheets.empty());
        const std::string text = all_text(*sheets.sheets.front());
        if (first == 0) {
            CHECK_THAT(text, !Contains("DO NOT LAY"));
            continue;
        }
        std::vector<const TextItem*> items = text_items(*sheets.sheets.front());
        std::stable_sort(items.begin(), items.end(),
                         [](const TextItem* a, const TextItem* b) { return a->size > b->size; });
        CHECK(items[0]->text == "DO NOT LAY");
        CHECK(items[0]->size > 18); // mm
        CHECK_THAT(text, !Contains("COMPASS") && !Contains("T1"));
        CHECK_THAT(text, Contains("Do not go above course 29"));
        CHECK(sheet_faults(*sheets.sheets.front(), 10 - 1e-6, measure).empty());
    }
    // Inside radii by the circle: 919 and 353 mm; the flats lose half a course at each edge, so
    // that 353 + 485 - 75 and 919 + 75 miss each other by 231.
    CHECK_THAT(all_text(*sheets_of_course(book, 30, "").sheets.front()), Contains("231 mm"));
    // The disc over that hole: its own 543 mm are less than twice 353.
    CHECK_THAT(all_text(*sheets_of_course(book, 31, "").sheets.front()),
               Contains("543 mm") && Contains("705 mm") && Contains("fall through"));
}

TEST_CASE("cover, sheet 2, cut list and compass table do not pass over checks that fail") {
    const BuildingPlan plan = flat_crown();
    const std::vector<Sheet> book = crew_book(plan, a4_paper(), pango_measure(), plan.findings);
    CHECK_THAT(all_text(book[0]), Contains("1 CHECK OF THIS DESIGN FAILS"));
    CHECK_THAT(all_text(book[1]), Contains("CHECKS THAT FAIL: 1") &&
                                      Contains("Course 30 of 'main' does not rest on course 29") &&
                                      Contains("Nor does course 31"));
    std::string all;
    for (const Sheet& sheet : book)
        all += all_text(sheet);
    CHECK_THAT(all, Contains("Course 30: DO NOT LAY") && Contains("Course 31, cap: DO NOT LAY") &&
                        Contains("do not lay"));
    // A book without such a check says nothing of the kind.
    const BuildingPlan store = demo_plan("grain-store");
    for (const Sheet& sheet : crew_book(store, a4_paper(), pango_measure(), store.findings))
        CHECK_THAT(all_text(sheet), !Contains("FAIL") && !Contains("DO NOT LAY"));
}
