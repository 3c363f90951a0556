// A crew that measured a top finds it on the sheet of its course, in the table and on the rod.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

std::string text_under(const BuildingPlan& plan, const std::string& title) {
    std::string text;
    for (const Sheet& sheet : crew_book(plan, letter_paper(), pango_measure()))
        if (sheet.title.rfind(title, 0) == 0)
            text += all_text(sheet);
    return text;
}

} // namespace

TEST_CASE("A measured top is told on its course's sheet, in the compass table and on the rod") {
    const BuildingPlan planned = demo_plan("grain-store");
    Design design = planned.design;
    design.as_laid_tops[9] = 31.25 * metres_per_inch; // planned 30 in
    const BuildingPlan measured = plan_building(design, {});
    REQUIRE(measured.sound());

    CHECK_THAT(text_under(measured, "Course 9"), Catch::Contains("Its top, as measured"));
    CHECK_THAT(text_under(measured, "Course 9"), Catch::Contains("2 ft 7-1/4 in"));
    CHECK_THAT(text_under(measured, "Course 10"), Catch::Contains("Its top, on the rod"));
    CHECK_THAT(text_under(measured, "Course 10"), Catch::Contains("3 ft 0-1/4 in"));
    CHECK_THAT(text_under(planned, "Course 9"), !Catch::Contains("as measured"));

    CHECK_THAT(text_under(measured, "Compass table"), Catch::Contains("2 ft 7-1/4 in *"));
    CHECK_THAT(text_under(measured, "Compass table"), Catch::Contains("as measured on site"));
    CHECK_THAT(text_under(planned, "Compass table"), !Catch::Contains("*"));

    CHECK_THAT(text_under(measured, "Story rod"),
               Catch::Contains("2 ft 7-1/4 in Top of course 9, as measured"));
    CHECK_THAT(text_under(measured, "Story rod"),
               Catch::Contains("3 ft 0-1/4 in Top of course 10"));
}
