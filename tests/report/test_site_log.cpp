// The site log of the demos: every day has its sheet, with what its courses should read.
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/page.hpp"
#include "geometry/report/site_log.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>
#include <chrono>
#include <regex>

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

// The works file of the grain store starts on 2027-04-05 and rests on Sundays. The judge is the
// calendar of the standard library.
TEST_CASE("sheets bear the dates of a calendar that rests on Sundays") {
    using namespace std::chrono;
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const WorkedOut out = work_everything_out(plan, demo_works("grain-store"));
    const sys_days start = 2027y / April / 5;
    sys_days last = start - days(1);
    int dated = 0, sundays = 0;
    for (const Sheet& sheet : site_log(plan, out, letter_paper(), even_letters)) {
        std::smatch title, calendar;
        REQUIRE(std::regex_search(sheet.title, title,
                                  std::regex("^Day ([0-9]+)   ([0-9]+)-([0-9]{2})-([0-9]{2})")));
        const std::string text = sheet_text(sheet);
        if (!std::regex_search(text, calendar, std::regex("day ([0-9]+) on the calendar")))
            continue; // goes on from the sheet before
        const sys_days date =
            year(std::stoi(title[2])) / month(std::stoul(title[3])) / day(std::stoul(title[4]));
        CAPTURE(sheet.title, calendar[1].str());
        if (date == last)
            continue;
        CHECK(std::stoi(title[1]) == ++dated);
        CHECK(date == start + days(std::stoi(calendar[1]) - 1));
        CHECK(weekday(date) != Sunday);
        CHECK(date > last);
        // Rest days alone stand between working days while courses are laid.
        if (dated > 1 && date - last == days(2) && weekday(last) == Saturday)
            ++sundays;
        last = date;
    }
    CHECK(dated == static_cast<int>(out.days.days.size()));
    CHECK(dated > 12);
    CHECK(sundays >= 2);

    // Without a start there is a line to write the date on, and no date.
    Works undated = demo_works("grain-store");
    undated.crew.start.reset();
    const WorkedOut plain = work_everything_out(plan, undated);
    for (const Sheet& sheet : site_log(plan, plain, letter_paper(), even_letters)) {
        CHECK(sheet.title.find("2027") == std::string::npos);
        CHECK(sheet_text(sheet).find("Date:") != std::string::npos);
    }
}
