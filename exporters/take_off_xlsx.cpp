#include "exporters/take_off_xlsx.hpp"

#include "exporters/take_off_sheets.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

using Look = CellLook;

/// Elements in the order in which the lines name them.
std::vector<std::string> elements_of(const TakeOff& take) {
    std::vector<std::string> names;
    for (const TakeOffLine& line : take.lines)
        if (std::find(names.begin(), names.end(), line.element) == names.end())
            names.push_back(line.element);
    return names;
}

/// Elements down, phases across, sums and shares at the ends; each cell a sum over Amounts.
WorkSheet costs_sheet(const TakeOff& take, const Costs& costs) {
    using namespace take_off_sheets;
    const std::vector<std::string> elements = elements_of(take);
    const std::size_t phases = std::size(all_phases), total = phases + 1, share = phases + 2;
    const std::size_t sum_row = first_entry + elements.size();
    WorkSheet sheet{"Costs", {18}, {}, static_cast<int>(first_entry), {}};
    sheet.rows = {{{"Costs by element and by phase, at the likely prices" + in_currency(costs),
                    {},
                    Look::title}},
                  {{"element", {}, Look::head}}};
    for (const Phase phase : all_phases)
        sheet.rows[1].push_back({word(phase), {}, Look::head});
    sheet.rows[1].push_back({"all", {}, Look::head});
    sheet.rows[1].push_back({"share", {}, Look::head});
    sheet.widths.resize(share + 1, 12);
    const auto amounts = [&](std::size_t column) {
        return entries_range("Amounts", column, take.lines.size());
    };
    std::vector<double> by_phase(phases, 0);
    const auto row_of = [&](const std::string& name, std::size_t row, std::vector<double> values,
                            Look look) {
        std::vector<SheetCell> cells{{name, {}, look}};
        double sum = 0;
        for (std::size_t p = 0; p < phases; ++p) {
            sum += values[p];
            const std::string text =
                row == sum_row
                    ? "=SUM(" + cell_name(first_entry, p + 1) + ":" +
                          cell_name(sum_row - 1, p + 1) + ")"
                    : "=SUMIFS(" + amounts(line_column::cost) + "," +
                          amounts(line_column::element) + "," + cell_name(row, 0) + "," +
                          amounts(line_column::phase) + "," + cell_name(1, p + 1, true) + ")";
            cells.push_back({Formula{text, values[p]}, money, look});
        }
        cells.push_back(
            {Formula{"=SUM(" + cell_name(row, 1) + ":" + cell_name(row, phases) + ")", sum}, money,
             look});
        const std::string all = cell_name(sum_row, total, true);
        const double whole = costs.total.likely;
        cells.push_back({Formula{"=IF(" + all + "=0,0," + cell_name(row, total) + "/" + all + ")",
                                 whole > 0 ? sum / whole : 0},
                         percent, look});
        return cells;
    };
    for (std::size_t e = 0; e < elements.size(); ++e) {
        std::vector<double> values(phases, 0);
        for (const TakeOffLine& line : take.lines)
            if (line.element == elements[e])
                values[static_cast<std::size_t>(line.phase)] += cost_of_line(take, costs, line);
        for (std::size_t p = 0; p < phases; ++p)
            by_phase[p] += values[p];
        sheet.rows.push_back(row_of(elements[e], first_entry + e, values, Look::plain));
    }
    sheet.rows.push_back(row_of("all", sum_row, by_phase, Look::strong));
    std::vector<SheetCell> shares{{std::string("share"), {}, Look::plain}};
    for (std::size_t p = 0; p <= phases; ++p) {
        const std::string all = cell_name(sum_row, total, true), here = cell_name(sum_row, p + 1);
        const double value = p < phases ? by_phase[p] : costs.total.likely;
        shares.push_back({Formula{"=IF(" + all + "=0,0," + here + "/" + all + ")",
                                  costs.total.likely > 0 ? value / costs.total.likely : 0},
                          percent, Look::plain});
    }
    sheet.rows.push_back(std::move(shares));
    const int below = static_cast<int>(sum_row) + 4;
    const auto across = [&](std::size_t row) {
        return "=Costs!" + cell_name(row, 1, true) + ":" + cell_name(row, phases, true);
    };
    sheet.bars.push_back({"Cost by phase", across(1), across(sum_row), below, 0});
    return sheet;
}

class Summary {
public:
    Summary(const TakeOff& take, const Costs& costs, const DayPlan& days)
        : take_(take), costs_(costs), days_(days) {}

    WorkSheet made() {
        sheet_.name = "Summary";
        sheet_.widths = {34, 14, 14, 14, 40};
        text(take_.name, Look::title);
        text("CAUTION. " + words::caution(), Look::note);
        text("The yellow cells of sheet Buy are yours to change: prices, waste. What follows from "
             "them follows at once.",
             Look::note);
        sheet_.rows.emplace_back();
        totals();
        sheet_.rows.emplace_back();
        stages();
        sheet_.rows.emplace_back();
        row({{std::string("Assumptions"), {}, Look::head}});
        for (const std::string& note : take_.notes)
            text(note, Look::note);
        for (const std::string& note : days_.notes)
            text(note, Look::note);
        return std::move(sheet_);
    }

private:
    void row(std::vector<SheetCell> cells) { sheet_.rows.push_back(std::move(cells)); }
    void text(const std::string& words, Look look) { row({{words, {}, look}}); }

    void totals() {
        using namespace take_off_sheets;
        const std::size_t sums = first_entry + take_.items.size();
        const auto of_buy = [&](std::size_t column, double value) {
            return SheetCell{Formula{"=Buy!" + cell_name(sums, column), value}, money, Look::plain};
        };
        row({{"What it costs" + in_currency(costs_), {}, Look::head},
             {std::string("low"), {}, Look::head},
             {std::string("likely"), {}, Look::head},
             {std::string("high"), {}, Look::head}});
        const std::size_t at = sheet_.rows.size();
        row({{std::string("All that has a price"), {}, Look::plain},
             of_buy(buy_column::cost_low, costs_.total.low),
             of_buy(buy_column::cost, costs_.total.likely),
             of_buy(buy_column::cost_high, costs_.total.high)});
        const double floor = shown_amount(take_.floor_area, AmountUnit::square_metre, take_.unit);
        const std::string floor_unit = shown_unit(AmountUnit::square_metre, take_.unit);
        if (floor > 0) {
            std::vector<SheetCell> cells{{"For each " + floor_unit + " of floor", {}, Look::plain}};
            const double values[] = {costs_.total.low, costs_.total.likely, costs_.total.high};
            for (std::size_t i = 0; i < 3; ++i)
                cells.push_back(
                    {Formula{"=" + cell_name(at, i + 1) + "/" + cell_name(at + 2, 1, true),
                             values[i] / floor},
                     price, Look::plain});
            row(std::move(cells));
            row({{"Floor between the bags, " + floor_unit, {}, Look::plain},
                 {floor, "0.0", Look::plain}});
        }
        if (!costs_.items.empty()) {
            row({{std::string("Nine times in ten under (*)"), {}, Look::plain},
                 {costs_.simulated.nine_tenths, money, Look::plain}});
            text("(*) by simulation of the prices as they were written; it does not follow changes "
                 "made here.",
                 Look::note);
        }
        if (!costs_.unpriced.empty()) {
            std::string names;
            for (const std::string& name : costs_.unpriced)
                names += (names.empty() ? "" : ", ") + name;
            text("Without a price: " + names + ".", Look::note);
        }
    }

    void stages() {
        const auto number = [](int value) {
            return SheetCell{static_cast<double>(value), "0", Look::plain};
        };
        row({{std::string("How long it takes"), {}, Look::head},
             {std::string("first day"), {}, Look::head},
             {std::string("last day"), {}, Look::head},
             {std::string("person-days"), {}, Look::head}});
        const std::size_t first = sheet_.rows.size();
        for (const StageBar& bar : days_.stages)
            row({{bar.name, {}, Look::plain},
                 number(bar.from + 1),
                 number(bar.to + 1),
                 {bar.person_days, "0.0", Look::plain}});
        const std::size_t last = sheet_.rows.size() - 1;
        if (!days_.stages.empty())
            row({{std::string("all"), {}, Look::strong},
                 {static_cast<double>(1), "0", Look::strong},
                 {static_cast<double>(days_.calendar_days), "0", Look::strong},
                 {Formula{"=SUM(" + cell_name(first, 3) + ":" + cell_name(last, 3) + ")",
                          days_.person_days},
                  "0.0", Look::strong}});
        if (!days_.ended)
            text("The work does not end within ten years: the days are those of the first ten.",
                 Look::strong);
        row({{std::string("Days on which the crew works"), {}, Look::plain},
             number(days_.working_days)});
        if (!days_.days.empty() && days_.days.front().date)
            row({{std::string("From, to"), {}, Look::plain},
                 {date_text(*days_.days.front().date), {}, Look::plain},
                 {date_text(*days_.days.back().date), {}, Look::plain}});
    }

    const TakeOff& take_;
    const Costs& costs_;
    const DayPlan& days_;
    WorkSheet sheet_;
};

} // namespace

std::string take_off_xlsx(const TakeOff& take, const Costs& costs, const DayPlan& days) {
    using namespace take_off_sheets;
    return xlsx_bytes(take.name,
                      {Summary(take, costs, days).made(), buy_sheet(take, costs),
                       amounts_sheet(take, costs), costs_sheet(take, costs), days_sheet(take, days),
                       courses_sheet(take), rolls_sheet(take), pieces_sheet(take)});
}

} // namespace coilwright
