// The owner's two pages: what stands on them, and that bars are as long as what they stand for.
#include "geometry/drawing/crew_book.hpp"
#include "geometry/drawing/page.hpp"
#include "geometry/report/bars.hpp"
#include "geometry/report/owner_report.hpp"
#include "geometry/takeoff/amount_text.hpp"
#include "geometry/takeoff/orders.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;
using namespace coilwright::testing;

namespace {

TextExtent even_font(const std::string& text, double size, bool bold) {
    return {static_cast<double>(text.size()) * size * (bold ? 0.58 : 0.5), size * 0.73, size * 0.2};
}

std::string text_of(const std::vector<Sheet>& sheets) {
    std::string all;
    for (const Sheet& sheet : sheets)
        for (const PaperItem& item : sheet.items)
            if (const auto* text = std::get_if<TextItem>(&item))
                all += text->text + " ";
    return all;
}

/// Widths of the flat fills of a sheet, in the order drawn.
std::vector<double> fill_widths(const Sheet& sheet) {
    std::vector<double> widths;
    for (const PaperItem& item : sheet.items)
        if (std::holds_alternative<FillItem>(item))
            widths.push_back(bounds(item, even_font).width());
    return widths;
}

const char* const demos[] = {"cabin-metric", "grain-store", "home",    "retreat",
                             "square-door",  "washroom",    "workshop"};

} // namespace

TEST_CASE(
    "the owner gets two pages of every demo, with the caution, and nothing leaves the frame") {
    for (const std::string demo : demos)
        for (const PaperSize& paper : {letter_paper(), a4_paper()})
            for (const bool priced : {true, false}) {
                CAPTURE(demo, paper.name, priced);
                const BuildingPlan plan = demo_plan(demo + ".toml");
                const WorkedOut out =
                    work_everything_out(plan, priced ? demo_works(demo) : default_works());
                const std::vector<Sheet> sheets = owner_report(plan, out, paper, even_font);
                CHECK(sheets.size() == 2);
                for (const Sheet& sheet : sheets) {
                    CHECK(text_of({sheet}).find("CAUTION") != std::string::npos);
                    const PaperBox frame = grown(frame_of(sheet.width, sheet.height), 0.5);
                    for (const PaperItem& item : sheet.items) {
                        const PaperBox box = bounds(item, even_font);
                        CAPTURE(sheet.title, item.index(), box.left, box.right, box.bottom,
                                box.top);
                        CHECK(inside(box, frame));
                    }
                }
            }
}

TEST_CASE("totals come first, invented prices are said to be, every order has its stage") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const WorkedOut out = work_everything_out(plan, demo_works("grain-store"));
    const std::vector<Sheet> sheets = owner_report(plan, out, letter_paper(), even_font);
    const std::string first = text_of({sheets[0]}), all = text_of(sheets);
    CHECK(first.find(money_text(out.costs.total.likely, "shells")) != std::string::npos);
    CHECK(first.find(std::to_string(out.days.working_days)) != std::string::npos);
    CHECK(first.find("Invented prices") != std::string::npos);
    for (const OrderGroup& group : order_list(out.take, out.days)) {
        REQUIRE(group.date);
        CHECK(all.find("day " + std::to_string(*group.calendar + 1) + ", " +
                       date_text(*group.date)) != std::string::npos);
    }
    for (const StageBar& bar : out.days.stages)
        CHECK(all.find(bar.name) != std::string::npos);
    // Without prices there is no sum to be seen.
    const WorkedOut bare = work_everything_out(plan, default_works());
    const std::string none = text_of(owner_report(plan, bare, letter_paper(), even_font));
    CHECK(none.find("no prices") != std::string::npos);
    CHECK(none.find("nine times in ten") == std::string::npos);
    CHECK(none.find("Barbed wire") != std::string::npos);
}

TEST_CASE("the owner's pages have whole words, the design's units and no keys of files") {
    for (const std::string demo :
         {"grain-store", "home", "square-door", "seed-house", "cabin-metric"})
        for (const PaperSize& paper : {letter_paper(), a4_paper()}) {
            CAPTURE(demo, paper.name);
            const BuildingPlan plan = demo_plan(demo + ".toml");
            for (const Works& works : {demo_works(demo), default_works()}) {
                const std::vector<Sheet> sheets =
                    owner_report(plan, work_everything_out(plan, works), paper, even_font);
                for (const Sheet& sheet : sheets)
                    for (const PaperItem& item : sheet.items)
                        if (const auto* words = std::get_if<TextItem>(&item)) {
                            CAPTURE(words->text);
                            CHECK(words->text.find('[') == std::string::npos);
                            CHECK((words->text.find(" m3") == std::string::npos ||
                                   plan.schedule.unit != DisplayUnit::feet));
                            // Titles of pages are wider in this test's font than in the book's.
                            CHECK((words->text.find("…") == std::string::npos || words->size > 5));
                        }
            }
        }
}

TEST_CASE("bars are as long as their values, stages as long as their days") {
    Sheet sheet;
    const PaperBox box{10, 10, 190, 100};
    add_bars(
        sheet, box,
        {{"a", 10, "10", 0, 0}, {"b", 5, "5", 0, 0}, {"c", 0, "0", 0, 0}, {"d", 2.5, "2", 1, 3}}, 4,
        even_font);
    const std::vector<double> widths = fill_widths(sheet);
    REQUIRE(widths.size() == 3); // nothing for nothing
    CHECK(widths[1] == Approx(widths[0] / 2));
    CHECK(widths[2] == Approx(widths[0] / 4));

    DayPlan days;
    days.calendar_days = 40;
    days.stages = {{"Trench", 0, 3, 12}, {"Courses", 4, 23, 60}};
    Sheet chart;
    add_stages(chart, box, days, 4, even_font);
    const std::vector<double> lengths = fill_widths(chart);
    REQUIRE(lengths.size() == 2);
    CHECK(lengths[1] == Approx(5 * lengths[0])); // 20 days against 4
}
