#include "exporters/take_off_sheets.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright::take_off_sheets {

namespace {

using Look = CellLook;

/// The full value, so that a spreadsheet reckons with what we reckoned with.
std::string number_text(double value) {
    return trimmed_text(value, 12);
}

/// Row of an item on the sheet Buy.
std::size_t row_of(const TakeOff& take, const std::string& item) {
    const auto found = std::find_if(take.items.begin(), take.items.end(),
                                    [&](const TakeOffItem& one) { return one.code == item; });
    return first_entry + static_cast<std::size_t>(found - take.items.begin());
}

std::string lines_range(const TakeOff& take, std::size_t column) {
    return entries_range("Amounts", column, take.lines.size());
}

/// Whole packs; a millionth of one too much does not take another.
std::string packs_formula(const std::string& amount, const std::string& size) {
    return "ROUNDUP(" + amount + "/" + size + "-0.000001,0)";
}

class BuyRow {
public:
    BuyRow(const TakeOff& take, const Costs& costs, const TakeOffItem& item, std::size_t row,
           double wire_lap)
        : take_(take), item_(item), cost_(find_cost(costs, item.code)), row_(row), lap_(wire_lap) {}

    std::vector<SheetCell> made() const {
        namespace c = buy_column;
        std::vector<SheetCell> cells(c::how + 1);
        cells[c::item] = text_cell(item_.code);
        cells[c::name] = text_cell(item_.name);
        cells[c::unit] = text_cell(shown_unit(item_.unit, take_.unit));
        cells[c::needed] = {Formula{"=SUMIF(" + lines_range(take_, line_column::item) + "," +
                                        at(c::item) + "," +
                                        lines_range(take_, line_column::amount) + ")",
                                    shown(item_.amount)},
                            amount};
        cells[c::waste] = {item_.waste, percent, Look::input};
        add_purchase(cells);
        add_price(cells);
        cells[c::how] = text_cell(item_.how);
        return cells;
    }

private:
    std::string at(std::size_t column) const { return cell_name(row_, column); }
    double shown(double value) const { return shown_amount(value, item_.unit, take_.unit); }

    /// The greatest number of rolls that the cuts pack into; 0 for all but tubes.
    int packed_rolls() const {
        for (const RollTake& rolls : take_.rolls)
            if ("tube-" + rolls.tube == item_.code)
                return static_cast<int>(rolls.plan.rolls.size());
        return 0;
    }

    void add_purchase(std::vector<SheetCell>& cells) const {
        namespace c = buy_column;
        const double with_waste = shown(item_.amount) * (1 + item_.waste);
        cells[c::with_waste] = {
            Formula{"=" + at(c::needed) + "*(1+" + at(c::waste) + ")", with_waste}, amount};
        if (item_.pack.empty()) {
            cells[c::to_buy] = {Formula{"=" + at(c::with_waste), shown(item_.to_buy)}, amount};
            return;
        }
        cells[c::pack] = text_cell(item_.pack);
        cells[c::pack_size] = {shown(item_.pack_size), amount, Look::input};
        const std::string size = at(c::pack_size), wanted = at(c::with_waste);
        std::string packs = packs_formula(wanted, size);
        if (item_.code == "wire") // where one spool ends the next is lapped on
            packs = packs_formula(
                "(" + wanted + "+MAX(0," + packs + "-1)*" + number_text(shown(lap_)) + ")", size);
        if (const int rolls = packed_rolls(); rolls > 0)
            packs = "MAX(" + packs + "," + std::to_string(rolls) + ")";
        cells[c::packs] = {Formula{"=" + packs, static_cast<double>(item_.packs)}, count};
        cells[c::to_buy] = {Formula{"=" + at(c::packs) + "*" + size, shown(item_.to_buy)}, amount};
    }

    void add_price(std::vector<SheetCell>& cells) const {
        namespace c = buy_column;
        const bool by_pack = cost_ ? cost_->per == "pack" : !item_.pack.empty();
        cells[c::per] = text_cell(by_pack ? item_.pack
                                  : cost_ ? cost_->per
                                          : shown_unit(item_.unit, take_.unit));
        const double bought = by_pack ? item_.packs : shown(item_.to_buy);
        const double quantity = cost_ ? cost_->quantity : bought;
        std::string text = "=" + at(by_pack ? c::packs : c::to_buy);
        if (bought > 0 && std::abs(quantity / bought - 1) > 1e-12)
            text += "*" + number_text(quantity / bought);
        cells[c::quantity] = {Formula{text, quantity}, amount};
        for (const std::size_t column : {c::low, c::likely, c::high})
            cells[column] = {std::monostate{}, price, Look::input};
        const double none = 0;
        const double prices[] = {cost_ ? cost_->price.low : none,
                                 cost_ ? cost_->price.likely : none,
                                 cost_ ? cost_->price.high : none};
        const double sums[] = {cost_ ? cost_->cost.low : none, cost_ ? cost_->cost.likely : none,
                               cost_ ? cost_->cost.high : none};
        for (std::size_t i = 0; i < 3; ++i) {
            if (cost_)
                cells[c::low + i].value = prices[i];
            // A price that is not given is the likely one.
            const std::string one = at(c::low + i), likely = at(c::likely);
            const std::string per =
                i == 1 ? likely : "IF(ISNUMBER(" + one + ")," + one + "," + likely + ")";
            cells[c::cost_low + i] = {Formula{"=" + at(c::quantity) + "*" + per, sums[i]}, money};
        }
        const std::string total = cell_name(first_entry + take_.items.size(), c::cost, true);
        cells[c::share] = {Formula{"=IF(" + total + "=0,0," + at(c::cost) + "/" + total + ")",
                                   cost_ ? cost_->share : 0},
                           percent};
        cells[c::source] = text_cell(cost_ ? cost_->source : "");
        cells[c::date] = text_cell(cost_ ? cost_->date : "");
    }

    const TakeOff& take_;
    const TakeOffItem& item_;
    const ItemCost* cost_;
    std::size_t row_;
    double lap_;
};

std::string figures_text(const TakeOffLine& line) {
    std::string text;
    for (const Figure& figure : line.figures)
        text += (text.empty() ? "" : "; ") + figure.name + " " + fixed_text(figure.value, 3) +
                (figure.unit.empty() ? "" : " " + figure.unit);
    return text;
}

/// The lap of wire that its lines were worked out with.
double wire_lap(const TakeOff& take) {
    for (const TakeOffLine& line : take.lines)
        if (line.item == "wire")
            for (const Figure& figure : line.figures)
                if (figure.name == "lap")
                    return figure.value;
    return 0;
}

} // namespace

std::string in_currency(const Costs& costs) {
    return costs.currency.empty() ? "" : " (" + costs.currency + ")";
}

double cost_of_line(const TakeOff& take, const Costs& costs, const TakeOffLine& line) {
    const ItemCost* cost = find_cost(costs, line.item);
    const TakeOffItem* item = find_item(take, line.item);
    return cost && item && item->amount > 0 ? cost->cost.likely * line.amount / item->amount : 0;
}

WorkSheet buy_sheet(const TakeOff& take, const Costs& costs) {
    namespace c = buy_column;
    WorkSheet sheet = listing_sheet("Buy", "What to buy, and what it costs" + in_currency(costs),
                                    {{"item", 16},          {"what", 24},
                                     {"unit", 7},           {"needed", 11},
                                     {"waste", 8},          {"with waste", 11},
                                     {"comes in", 9},       {"of", 9},
                                     {"packs", 7},          {"to buy", 11},
                                     {"price for one", 10}, {"how many", 10},
                                     {"low", 10},           {"likely", 10},
                                     {"high", 10},          {"cost, low", 11},
                                     {"cost, likely", 11},  {"cost, high", 11},
                                     {"share", 8},          {"who said so", 26},
                                     {"when", 11},          {"how it was worked out", 50}});
    for (const TakeOffItem& item : take.items)
        sheet.rows.push_back(BuyRow(take, costs, item, sheet.rows.size(), wire_lap(take)).made());
    std::vector<SheetCell> sums(c::cost_high + 1);
    sums[c::item] = text_cell("all", Look::strong);
    const double totals[] = {costs.total.low, costs.total.likely, costs.total.high};
    for (std::size_t i = 0; i < 3; ++i)
        sums[c::cost_low + i] = entries_sum(c::cost_low + i, take.items.size(), totals[i], money);
    sheet.rows.push_back(std::move(sums));
    return sheet;
}

WorkSheet amounts_sheet(const TakeOff& take, const Costs& costs) {
    WorkSheet sheet = listing_sheet("Amounts", "Every amount, and how it was worked out",
                                    {{"item", 16},
                                     {"what is bought", 22},
                                     {"element", 14},
                                     {"phase", 10},
                                     {"what", 34},
                                     {"amount", 11},
                                     {"unit", 7},
                                     {"how it was worked out", 60},
                                     {"from (metres, kilograms, litres)", 44},
                                     {"its part of the cost" + in_currency(costs), 12}});
    for (const TakeOffLine& line : take.lines) {
        const TakeOffItem& item = *find_item(take, line.item);
        const std::size_t row = sheet.rows.size(), buy = row_of(take, line.item);
        const std::string needed = "Buy!" + cell_name(buy, buy_column::needed, true);
        sheet.rows.push_back(
            {text_cell(line.item),
             text_cell(item.name),
             text_cell(line.element),
             text_cell(word(line.phase)),
             text_cell(line.what),
             {shown_amount(line.amount, item.unit, take.unit), amount},
             text_cell(shown_unit(item.unit, take.unit)),
             text_cell(line.how),
             text_cell(figures_text(line)),
             {Formula{"=IF(" + needed + "=0,0," + cell_name(row, line_column::amount) + "/" +
                          needed + "*Buy!" + cell_name(buy, buy_column::cost, true) + ")",
                      cost_of_line(take, costs, line)},
              price}});
    }
    return sheet;
}

WorkSheet days_sheet(const TakeOff& take, const DayPlan& days) {
    const auto unit = [&](AmountUnit one) { return shown_unit(one, take.unit); };
    WorkSheet sheet = listing_sheet("Days", "Day by day",
                                    {{"day", 6},
                                     {"on the calendar", 9},
                                     {"date", 11},
                                     {"work", 40},
                                     {"what to set, strike or leave", 60},
                                     {"person-days", 9},
                                     {"loose fill, " + unit(AmountUnit::cubic_metre), 9},
                                     {"buckets", 9},
                                     {"stabiliser, " + unit(AmountUnit::kilogram), 10},
                                     {"water, " + unit(AmountUnit::litre), 9},
                                     {"tube to cut, " + unit(AmountUnit::metre), 10},
                                     {"wire, " + unit(AmountUnit::metre), 9}});
    double sums[7] = {};
    for (const WorkDay& day : days.days) {
        std::string work, set;
        for (const DayWork& one : day.work)
            work += (work.empty() ? "" : "\n") + one.what + (one.ends ? "" : " (goes on)");
        for (const std::string& one : day.set)
            set += (set.empty() ? "" : "\n") + one;
        const double values[] = {day.person_days,
                                 shown_amount(day.fill_loose, AmountUnit::cubic_metre, take.unit),
                                 day.buckets,
                                 shown_amount(day.stabiliser_mass, AmountUnit::kilogram, take.unit),
                                 shown_amount(day.water, AmountUnit::litre, take.unit),
                                 shown_amount(day.tube_cut, AmountUnit::metre, take.unit),
                                 shown_amount(day.wire, AmountUnit::metre, take.unit)};
        std::vector<SheetCell> cells{{static_cast<double>(day.number), count},
                                     {static_cast<double>(day.calendar + 1), count},
                                     text_cell(day.date ? date_text(*day.date) : ""),
                                     text_cell(work),
                                     text_cell(set)};
        for (std::size_t i = 0; i < std::size(values); ++i) {
            cells.push_back({values[i], "0.0"});
            sums[i] += values[i];
        }
        sheet.rows.push_back(std::move(cells));
    }
    std::vector<SheetCell> all(5);
    all[0] = text_cell("all", Look::strong);
    for (std::size_t i = 0; i < std::size(sums); ++i)
        all.push_back(entries_sum(5 + i, days.days.size(), sums[i], "0.0"));
    sheet.rows.push_back(std::move(all));
    return sheet;
}

WorkSheet courses_sheet(const TakeOff& take) {
    const auto unit = [&](AmountUnit one) { return shown_unit(one, take.unit); };
    WorkSheet sheet = listing_sheet("Courses", "What each course takes",
                                    {{"course", 8},
                                     {"element", 14},
                                     {"phase", 10},
                                     {"fill", 12},
                                     {"tube laid, " + unit(AmountUnit::metre), 11},
                                     {"tube to cut, " + unit(AmountUnit::metre), 11},
                                     {"wire, " + unit(AmountUnit::metre), 10},
                                     {"tamped, " + unit(AmountUnit::cubic_metre), 10},
                                     {"loose, " + unit(AmountUnit::cubic_metre), 10},
                                     {"stabiliser, " + unit(AmountUnit::kilogram), 11},
                                     {"water, " + unit(AmountUnit::litre), 10},
                                     {"buckets", 9},
                                     {"barrows", 9}});
    double sums[9] = {};
    for (const CourseTake& course : take.courses) {
        const double values[] = {
            shown_amount(course.tube_net, AmountUnit::metre, take.unit),
            shown_amount(course.tube_cut + course.lining, AmountUnit::metre, take.unit),
            shown_amount(course.wire, AmountUnit::metre, take.unit),
            shown_amount(course.soil.tamped, AmountUnit::cubic_metre, take.unit),
            shown_amount(course.soil.loose, AmountUnit::cubic_metre, take.unit),
            shown_amount(course.stabiliser_mass, AmountUnit::kilogram, take.unit),
            shown_amount(course.water, AmountUnit::litre, take.unit),
            course.buckets,
            course.barrows};
        std::vector<SheetCell> cells{
            {static_cast<double>(course.course), count},
            text_cell(course.element),
            text_cell(word(course.phase)),
            text_cell(course.kind == FillKind::gravel ? "gravel" : course.fill)};
        for (std::size_t i = 0; i < std::size(values); ++i) {
            cells.push_back({values[i], amount});
            sums[i] += values[i];
        }
        sheet.rows.push_back(std::move(cells));
    }
    std::vector<SheetCell> all(4);
    all[0] = text_cell("all", Look::strong);
    for (std::size_t i = 0; i < std::size(sums); ++i)
        all.push_back(entries_sum(4 + i, take.courses.size(), sums[i], amount));
    sheet.rows.push_back(std::move(all));
    return sheet;
}

WorkSheet rolls_sheet(const TakeOff& take) {
    const std::string unit = shown_unit(AmountUnit::metre, take.unit);
    WorkSheet sheet = listing_sheet("Rolls", "What is cut from which roll",
                                    {{"tube", 12},
                                     {"roll", 7},
                                     {"piece", 34},
                                     {"cut length, " + unit, 14},
                                     {"left of the roll, " + unit, 14}});
    for (const RollTake& rolls : take.rolls)
        for (std::size_t i = 0; i < rolls.plan.rolls.size(); ++i) {
            const RollCuts& one = rolls.plan.rolls[i];
            double left = rolls.roll;
            for (const std::size_t piece : one.pieces) {
                left -= rolls.lengths[piece];
                sheet.rows.push_back(
                    {text_cell(rolls.tube),
                     {static_cast<double>(i + 1), count},
                     text_cell(rolls.pieces[piece]),
                     {shown_amount(rolls.lengths[piece], AmountUnit::metre, take.unit), amount},
                     {shown_amount(left, AmountUnit::metre, take.unit), amount}});
            }
        }
    return sheet;
}

WorkSheet pieces_sheet(const TakeOff& take) {
    const std::string unit = shown_unit(AmountUnit::metre, take.unit);
    WorkSheet sheet = listing_sheet("Pieces", "Boards of forms and lintels to make",
                                    {{"element", 14},
                                     {"what", 26},
                                     {"how many", 10},
                                     {"length", 16},
                                     {"width", 12},
                                     {"thickness", 12},
                                     {"length in all, " + unit, 16}});
    for (const PieceTake& piece : take.pieces)
        sheet.rows.push_back(
            {text_cell(piece.element),
             text_cell(piece.what),
             {static_cast<double>(piece.count), count},
             text_cell(length_text(piece.length, take.unit)),
             text_cell(length_text(piece.width, take.unit)),
             text_cell(length_text(piece.depth, take.unit)),
             {shown_amount(piece.count * piece.length, AmountUnit::metre, take.unit), amount}});
    return sheet;
}

} // namespace coilwright::take_off_sheets
