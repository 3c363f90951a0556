// Every sheet of many books: no two texts overlap, no line runs through a text, nothing leaves the
// printable part of the paper.
#include "exporters/pdf.hpp"
#include "geometry/drawing/crew_book.hpp"
#include "tests/drawing/plans.hpp"
#include "tests/drawing/sheet_checks.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

// Common practice, no source: office printers leave up to a quarter of an inch (6.35 mm) white.
constexpr double printers_margin = 6.35;
constexpr double frame_margin = 10;

void require_sound(const BuildingPlan& plan, const PaperSize& paper, const MeasureText& measure) {
    static_assert(frame_margin > printers_margin);
    for (const auto& sheets :
         {crew_book(plan, paper, measure), compass_strip(plan, paper, measure)}) {
        CHECK_FALSE(sheets.empty());
        for (const Sheet& sheet : sheets)
            for (const std::string& fault : sheet_faults(sheet, frame_margin, measure)) {
                INFO(paper.name << ", " << fault);
                CHECK(false);
            }
    }
}

} // namespace

TEST_CASE("Sheets of the demos are clean on Letter and A4") {
    const MeasureText measure = pango_measure();
    for (const char* name : {"grain-store", "washroom", "workshop", "cabin-metric"})
        for (const PaperSize& paper : {letter_paper(), a4_paper()}) {
            CAPTURE(name);
            require_sound(demo_plan(name), paper, measure);
        }
}

TEST_CASE("Sheets of a crowded dome and of a pair are clean") {
    const MeasureText measure = pango_measure();
    for (const PaperSize& paper : {letter_paper(), a4_paper()}) {
        require_sound(crowded_plan(), paper, measure);
        require_sound(pair_plan(), paper, measure);
    }
}

TEST_CASE("Sheets of whole buildings are clean") {
    const MeasureText measure = pango_measure();
    for (const char* name : {"home", "retreat", "square-door"}) {
        CAPTURE(name);
        const bool metric = std::string(name) == "retreat";
        require_sound(whole_plan(name), metric ? a4_paper() : letter_paper(), measure);
    }
}

TEST_CASE("Sheets with 32 cuts are clean, and letter each of them") {
    const BuildingPlan plan = dense_plan();
    const MeasureText measure = pango_measure();
    require_sound(plan, letter_paper(), measure);
    for (const Sheet& sheet : crew_book(plan, a4_paper(), measure))
        if (sheet.title == "Course 13")
            for (const Cut& cut : plan.schedule.courses[12].rings[0].cuts)
                CHECK(count_of(sheet, cut.letter) >= 1);
}

TEST_CASE("Sheets of random buildings are clean") {
    const MeasureText measure = pango_measure();
    for (const SeededPlan& seeded : random_plans(1, 8)) {
        CAPTURE(seeded.seed);
        require_sound(seeded.plan, seeded.seed % 2 == 0 ? letter_paper() : a4_paper(), measure);
    }
}
