// The workbook of the take-off, reckoned anew by LibreOffice: no error, the totals of the JSON.
#include "exporters/spreadsheet.hpp"
#include "exporters/take_off_json.hpp"
#include "exporters/take_off_xlsx.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/takeoff/amount_text.hpp"
#include "geometry/takeoff/worked_out.hpp"
#include "tests/exporters/comma_locale.hpp"
#include "tests/exporters/recalculated.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"
#include "tests/support/works.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>

namespace coilwright {
namespace {

using nlohmann::json;

std::string book_of(const WorkedOut& out) {
    return take_off_xlsx(out.take, out.costs, out.days);
}

WorkedOut taken(const BuildingPlan& plan, const Works& works) {
    WorkedOut out = work_everything_out(plan, works, exact_region);
    REQUIRE(out.costs.diagnostics.empty());
    return out;
}

Works store_works() {
    return testing::demo_works("grain-store");
}

/// Columns of the sheet Buy.
enum {
    needed = 3,
    waste = 4,
    packs = 8,
    to_buy = 9,
    likely = 13,
    cost_low = 15,
    cost = 16,
    cost_high = 17
};

void check_totals(const json& sheets, const WorkedOut& taken) {
    const json written = json::parse(take_off_json(taken.take, taken.costs, taken.days));
    const json& buy = sheets.at("Buy");
    for (const json& item : written.at("items")) {
        const std::size_t row = row_named(buy, item.at("item"));
        CAPTURE(item.at("item").get<std::string>());
        const TakeOffItem& one = *find_item(taken.take, item.at("item"));
        CHECK(number_in(buy, row, needed) ==
              Approx(shown_amount(one.amount, one.unit, taken.take.unit)).epsilon(1e-9));
        CHECK(number_in(buy, row, to_buy) ==
              Approx(shown_amount(one.to_buy, one.unit, taken.take.unit)).epsilon(1e-9));
        if (!one.pack.empty())
            CHECK(number_in(buy, row, packs) == item.at("packs").get<double>());
    }
    const json& costs = written.at("costs");
    const auto total = [&](const char* key) {
        return costs.is_null() ? 0.0 : costs.at("total").at(key).get<double>();
    };
    const std::size_t all = row_named(buy, "all");
    CHECK(number_in(buy, all, cost_low) == Approx(total("low")).margin(1e-5));
    CHECK(number_in(buy, all, cost) == Approx(total("likely")).margin(1e-5));
    CHECK(number_in(buy, all, cost_high) == Approx(total("high")).margin(1e-5));
    const json& table = sheets.at("Costs");
    const std::size_t sums = row_named(table, "all");
    CHECK(number_in(table, sums, 7) == Approx(total("likely")).margin(1e-5));
    if (costs.is_null())
        return;
    for (const json& item : costs.at("items"))
        CHECK(number_in(buy, row_named(buy, item.at("item")), cost) ==
              Approx(item.at("cost").at("likely").get<double>()).margin(1e-5));
    for (const json& element : costs.at("by_element"))
        CHECK(number_in(table, row_named(table, element.at("name")), 7) ==
              Approx(element.at("likely").get<double>()).margin(1e-5));
    for (const json& phase : costs.at("by_phase")) {
        const json& heads = table.at(1);
        const auto at = std::find(heads.begin(), heads.end(), phase.at("name"));
        REQUIRE(at != heads.end());
        CHECK(number_in(table, sums, static_cast<std::size_t>(at - heads.begin())) ==
              Approx(phase.at("likely").get<double>()).margin(1e-5));
    }
    CHECK(number_in(sheets.at("Days"), row_named(sheets.at("Days"), "all"), 5) ==
          Approx(written.at("days").at("person_days").get<double>()).margin(1e-5));
}

} // namespace

TEST_CASE(
    "take-off.xlsx of every demo comes to the totals of take-off.json, without an error cell") {
    std::vector<std::pair<std::string, std::string>> books;
    std::vector<WorkedOut> all;
    for (const std::string& name : demo_files()) {
        all.push_back(taken(demo_plan(name), testing::demo_works(name.substr(0, name.find('.')))));
        CHECK(all.back().costs.unpriced.empty());
        books.emplace_back("book-" + std::to_string(books.size()), book_of(all.back()));
    }
    all.push_back(taken(demo_plan(demo_files().front()), default_works())); // nothing has a price
    books.emplace_back("unpriced", book_of(all.back()));
    const json read = recalculated(books);
    for (std::size_t i = 0; i < books.size(); ++i) {
        CAPTURE(all[i].take.name, books[i].first);
        const json& book = read.at(books[i].first);
        CHECK(book.at("dates") == json({"1980-01-01"}));
        CHECK_THAT(book.at("core").get<std::string>(), Catch::Contains("1980-01-01T00:00:00Z"));
        CHECK(book.at("formulas") > 100);
        CHECK(book.at("sheets").size() == 8);
        check_no_error(book.at("sheets"));
        check_totals(book.at("sheets"), all[i]);
    }
}

TEST_CASE("in take-off.xlsx a changed price and a changed waste carry on to the totals") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    Works works = store_works();
    const std::string before = book_of(taken(plan, works));
    const json first = recalculated({{"store", before}}).at("store").at("sheets");
    const auto cell = [&](const char* item, std::size_t column) {
        return "Buy!" + cell_name(row_named(first.at("Buy"), item), column);
    };
    // Lime from 13 to 17.5, the waste of wire from 5 % to 300 %; the door's leaf gets its price of
    // 180 twice over. A works file that says so must come to the same.
    for (Price& price : works.prices) {
        if (price.item == "lime")
            price.likely = 17.5;
        if (price.item == "door-leaf")
            price.likely = 360;
    }
    works.waste.wire = 3;
    const WorkedOut after = taken(plan, works);
    const json changed = recalculated({{"store", before}}, {cell("lime", likely) + "=17.5",
                                                            cell("door-leaf", likely) + "=360",
                                                            cell("wire", waste) + "=3"})
                             .at("store")
                             .at("sheets");
    CHECK(after.costs.total.likely > taken(plan, store_works()).costs.total.likely + 180);
    check_no_error(changed);
    check_totals(changed, after);
}

TEST_CASE("a price written beside an item that had none counts, low and high too") {
    const BuildingPlan plan = demo_plan("grain-store.toml");
    const WorkedOut bare = taken(plan, default_works());
    const std::string bytes = book_of(bare);
    const json first = recalculated({{"store", bytes}}).at("store").at("sheets").at("Buy");
    const json changed =
        recalculated({{"store", bytes}},
                     {"Buy!" + cell_name(row_named(first, "wire"), likely) + "=75"})
            .at("store")
            .at("sheets");
    const double spools = find_item(bare.take, "wire")->packs;
    const json& buy = changed.at("Buy");
    for (const std::size_t column : {cost_low, cost, cost_high})
        CHECK(number_in(buy, row_named(buy, "all"), column) == Approx(75 * spools));
    check_no_error(changed);
}

TEST_CASE("a workbook is the same bytes each time, in any locale") {
    const WorkedOut store = taken(demo_plan("grain-store.toml"), store_works());
    const std::string bytes = book_of(store);
    CHECK(bytes.size() > 10000);
    {
        const CommaLocale commas;
        CHECK((book_of(store) == bytes));
    }
    CHECK((book_of(store) == bytes));
}

TEST_CASE("cells have the names that spreadsheets give them") {
    CHECK(cell_name(0, 0) == "A1");
    CHECK(cell_name(4, 25) == "Z5");
    CHECK(cell_name(4, 26) == "AA5");
    CHECK(cell_name(9, 701) == "ZZ10");
    CHECK(cell_name(9, 702, true) == "$AAA$10");
}

// A row of one line is 15 points; programs that open a workbook keep the heights that it states.
TEST_CASE("rows are as high as the texts that are broken in their cells") {
    const std::string text = "Nail an anchor plate on each jamb of the door, block flush with the "
                             "form, and check that the form stands plumb";
    const ScratchDirectory scratch;
    const std::string file = (scratch.path() / "book.xlsx").string();
    put_bytes(file, xlsx_bytes("Heights", {{"One",
                                            {40, 10},
                                            {{{std::string("Day by day"), "", CellLook::title}},
                                             {{1.0}, {std::string("short")}},
                                             {{text}, {2.0}},
                                             {{std::string("wide"), "", CellLook::note}, {text}},
                                             {{std::string("one\ntwo\nthree and four")}}},
                                            0,
                                            {}}}));
    const std::string sheet = output_of({"unzip", "-p", file, "xl/worksheets/sheet1.xml"});
    const auto height = [&](int row) {
        const std::size_t at = sheet.find("<row r=\"" + std::to_string(row) + "\"");
        REQUIRE(at != std::string::npos);
        const std::string tag = sheet.substr(at, sheet.find('>', at) - at);
        const std::size_t stated = tag.find(" ht=\"");
        return stated == std::string::npos ? 15 : std::stod(tag.substr(stated + 5));
    };
    CHECK(height(1) > 20); // letters of 16 points
    CHECK(height(2) == 15);
    // 110 letters in cells of 40 and of 10: three lines at least, and eleven.
    CHECK(height(3) >= 3 * 15);
    CHECK(height(3) <= 4 * 15);
    CHECK(height(4) >= 11 * 15);
    CHECK(height(4) <= 18 * 15);
    CHECK(height(5) == 3 * 15);

    // In the demos' books too: whatever is broken in its cell has room.
    const WorkedOut store = taken(demo_plan("grain-store.toml"), store_works());
    put_bytes(file, book_of(store));
    int high = 0;
    for (const int number : {1, 2, 3, 4, 5, 6}) {
        const std::string one = output_of(
            {"unzip", "-p", file, "xl/worksheets/sheet" + std::to_string(number) + ".xml"});
        for (std::size_t at = 0; (at = one.find("customHeight=\"1\"", at)) != std::string::npos;
             ++at)
            ++high;
    }
    CHECK(high > 30);
}

TEST_CASE("texts stay texts, and what cannot be written is told") {
    const json read =
        recalculated(
            {{"texts",
              xlsx_bytes(
                  "Texts & <signs>",
                  {{"One", {}, {{{std::string("=1+1")}, {std::string("<b> & \"ü\"")}}}, 0, {}},
                   {"Two", {}, {{{Formula{"=1+1", 2}}}}, 0, {}}})}})
            .at("texts")
            .at("sheets");
    CHECK(read.at("One") == json::array({json::array({"=1+1", "<b> & \"ü\""})}));
    CHECK(read.at("Two") == json::array({json::array({"2"})}));
    CHECK_THROWS_WITH(xlsx_bytes("x", {{"One", {}, {{{1.0 / 0.0}}}, 0, {}}}),
                      Catch::Contains("not finite"));
    CHECK_THROWS_WITH(xlsx_bytes("x", {{"One/Two", {}, {}, 0, {}}}), Catch::Contains("called"));
}

} // namespace coilwright
