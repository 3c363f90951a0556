// The site log of the demos: every day has its sheet, with what its courses should read.
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/page.hpp"
#include "geometry/report/site_log.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

TextExtent even_letters(const std::string& text, double size, bool bold) {
    return {static_cast<double>(text.size()) * size * (bold ? 0.58 : 0.5), size * 0.73, size * 0.2};
}

std::string sheet_text(const Sheet& sheet) {
    std::string all;
    for (const PaperItem& item : sheet.items)
        if (const auto* text = std::get_if<TextItem>(&item))
            all += text->text + "\n";
    return all;
}

} // namespace

TEST_CASE("the site log has every day in order, and nothing leaves the frame") {
    for (const std::string demo : {"grain-store", "home", "cabin-metric", "retreat"})
        for (const PaperSize& paper : {letter_paper(), a4_paper()}) {
            CAPTURE(demo, paper.name);
            const BuildingPlan plan = demo_plan(demo + ".toml");
            const WorkedOut out = work_everything_out(plan, demo_works(demo));
            const std::vector<Sheet> sheets = site_log(plan, out, paper, even_letters);
            std::size_t day = 0;
            for (const Sheet& sheet : sheets) {
                const std::string text = sheet_text(sheet);
                CHECK(text.find("CAUTION") != std::string::npos);
                if (day < out.days.days.size() &&
                    sheet.title.rfind("Day " + std::to_string(day + 1) + " ", 0) == 0)
                    ++day;
                const PaperBox frame = grown(frame_of(sheet.width, sheet.height), 0.5);
                for (const PaperItem& item : sheet.items) {
                    const PaperBox box = bounds(item, even_letters);
                    CAPTURE(sheet.title, item.index(), box.left, box.right, box.bottom, box.top);
                    CHECK(inside(box, frame));
                    // Black on white.
                    if (const auto* words = std::get_if<TextItem>(&item))
                        CHECK(words->ink.grey == 0);
                }
            }
            CHECK(day == out.days.days.size());
        }
}

TEST_CASE("a day's sheet has its courses with compass and height, and room to write") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const WorkedOut out = work_everything_out(plan, demo_works("grain-store"));
    const std::vector<Sheet> sheets = site_log(plan, out, letter_paper(), even_letters);
    std::string all;
    for (const Sheet& sheet : sheets)
        all += sheet_text(sheet);
    for (const Course& course : plan.schedule.courses)
        for (const Ring& ring : course.rings) {
            CAPTURE(course.number);
            const DomeForm& dome = plan.schedule.building.domes.front();
            if (ring.kind == RingKind::ring)
                CHECK(all.find("\n" +
                               length_text(compass_readings(ring, dome, plan.design).front().metres,
                                           DisplayUnit::feet) +
                               "\n") != std::string::npos);
            CHECK(all.find("\n" + rod_text(course.top, DisplayUnit::feet) + "\n") !=
                  std::string::npos);
        }
    for (const char* const blank : {"Signed", "test bag: width, tamped", "parts by volume",
                                    "People here", "laid whole?", "used"})
        CHECK(all.find(blank) != std::string::npos);
    for (const WorkDay& day : out.days.days)
        for (const DayWork& work : day.work)
            CHECK(all.find(work.what) != std::string::npos);
}
