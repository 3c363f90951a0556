#include "exporters/take_off_json.hpp"

#include "exporters/csv.hpp"
#include "exporters/text_table.hpp"
#include "geometry/base/utf8.hpp"
#include "geometry/takeoff/amount_text.hpp"

#include <algorithm>

namespace coilwright {
namespace {

std::string number(double value) {
    return fixed_text(value, 6);
}

std::string percent(double share) {
    return fixed_text(100 * share, 1) + " %";
}

std::string buying_table(const TakeOff& take, const Costs& costs) {
    const bool priced = !costs.items.empty();
    std::vector<TextColumn> columns{
        {"item", CellAlign::left}, {"", CellAlign::left}, {"takes"}, {"waste"}, {"buy"}};
    if (priced) {
        columns.push_back({"price"});
        columns.push_back({"per", CellAlign::left});
        columns.push_back({"cost"});
        columns.push_back({"share"});
    }
    std::vector<std::vector<std::string>> rows;
    for (const TakeOffItem& item : take.items) {
        std::vector<std::string> row{item.code, item.name,
                                     amount_text(item.amount, item.unit, take.unit),
                                     percent(item.waste), purchase_text(item, take.unit)};
        if (priced) {
            const ItemCost* cost = find_cost(costs, item.code);
            row.push_back(cost ? fixed_text(cost->price.likely, 2) : "");
            row.push_back(cost ? cost->per : "");
            row.push_back(cost ? money_text(cost->cost.likely, "") : "no price");
            row.push_back(cost ? percent(cost->share) : "");
        }
        rows.push_back(std::move(row));
    }
    return text_table(columns, rows);
}

std::string share_table(const std::string& heading, const std::vector<CostShare>& shares) {
    std::vector<std::vector<std::string>> rows;
    for (const CostShare& one : shares)
        rows.push_back({one.name, money_text(one.likely, ""), percent(one.share)});
    return "\n" + text_table({{heading, CellAlign::left}, {"cost"}, {"share"}}, rows);
}

std::string money_lines(const TakeOff& take, const Costs& costs) {
    if (costs.items.empty())
        return "\nNo prices: write them into a works file (docs/reference/works-file.md).\n";
    const auto money = [&](double amount) { return money_text(amount, costs.currency); };
    const bool feet = take.unit == DisplayUnit::feet;
    std::string text = "\nTotal: " + money(costs.total.likely) + " likely, " +
                       money(costs.total.low) + " to " + money(costs.total.high) +
                       " if all prices are low or high; nine times in ten under " +
                       money(costs.simulated.nine_tenths) + ".\n";
    if (costs.per_floor_area > 0)
        text += "That is " +
                money(costs.per_floor_area * (feet ? square_metres_per_square_foot : 1)) +
                (feet ? " a square foot" : " a square metre") + " of floor.\n";
    if (!costs.unpriced.empty()) {
        text += "Without a price:";
        for (const std::string& name : costs.unpriced)
            text += (name == costs.unpriced.front() ? " " : ", ") + name;
        text += ".\n";
    }
    return text + share_table("phase", costs.by_phase) + share_table("element", costs.by_element);
}

/// Domes, tunnels and buttresses, where there is more than one.
std::string element_table(const TakeOff& take) {
    std::vector<std::vector<std::string>> rows;
    for (const ElementTake& total : element_totals(take))
        rows.push_back({total.element,
                        amount_text(total.tube_cut + total.lining, AmountUnit::metre, take.unit),
                        amount_text(total.wire, AmountUnit::metre, take.unit),
                        amount_text(total.soil.tamped, AmountUnit::cubic_metre, take.unit),
                        amount_text(total.soil.loose, AmountUnit::cubic_metre, take.unit),
                        fixed_text(total.buckets, 0), fixed_text(total.barrows, 0)});
    if (rows.size() < 2)
        return {};
    return "\n" + text_table({{"element", CellAlign::left},
                              {"tube to cut"},
                              {"wire"},
                              {"tamped"},
                              {"loose"},
                              {"buckets"},
                              {"barrows"}},
                             rows);
}

std::string day_table(const DayPlan& days) {
    std::vector<std::vector<std::string>> rows;
    for (const StageBar& bar : days.stages) {
        // A chart of at most 40 columns.
        const int width = std::max(1, days.calendar_days);
        const auto column = [&](int day) { return day * 40 / width; };
        std::string chart(static_cast<std::size_t>(column(bar.from)), ' ');
        chart += std::string(
            static_cast<std::size_t>(std::max(1, column(bar.to + 1) - column(bar.from))), '#');
        rows.push_back({bar.name, std::to_string(bar.from + 1), std::to_string(bar.to + 1),
                        fixed_text(bar.person_days, 1), chart});
    }
    std::string text = "\n" + text_table({{"stage", CellAlign::left},
                                          {"from day"},
                                          {"to day"},
                                          {"person-days"},
                                          {"", CellAlign::left}},
                                         rows);
    text += "\nDays: " + std::to_string(days.working_days) + " of work within " +
            std::to_string(days.calendar_days) + " on the calendar";
    if (!days.days.empty() && days.days.back().date)
        text += ", to " + date_text(*days.days.back().date);
    return text + (days.ended ? ".\n" : "; more than ten years: the plan is cut off.\n");
}

} // namespace

std::string take_off_csv(const TakeOff& take, const Costs& costs) {
    std::string text =
        csv_row({"kind", "item", "name", "element", "phase", "amount", "unit", "waste", "to_buy",
                 "pack", "packs", "likely_cost", "currency", "how"});
    for (const TakeOffLine& line : take.lines)
        text += csv_row({"line", line.item, line.what, line.element, word(line.phase),
                         number(line.amount), word(find_item(take, line.item)->unit), "", "", "",
                         "", "", "", line.how});
    for (const TakeOffItem& item : take.items) {
        const ItemCost* cost = find_cost(costs, item.code);
        text +=
            csv_row({"buy", item.code, item.name, "", "", number(item.amount), word(item.unit),
                     number(item.waste), number(item.to_buy), item.pack,
                     item.pack.empty() ? "" : std::to_string(item.packs),
                     cost ? number(cost->cost.likely) : "", cost ? costs.currency : "", item.how});
    }
    return text;
}

std::string take_off_table(const TakeOff& take, const Costs& costs, const DayPlan& days) {
    std::string text = shown_text(take.name) + "\n\n" + buying_table(take, costs);
    std::string rolls;
    for (const RollTake& one : take.rolls) {
        double offcuts = 0;
        for (const RollCuts& cuts : one.plan.rolls)
            offcuts += cuts.offcut;
        rolls += "\nTube '" + one.tube + "': " + std::to_string(one.plan.rolls.size()) +
                 (one.plan.rolls.size() == 1 ? " roll" : " rolls") + " by packing, at least " +
                 std::to_string(one.plan.least) + "; laid " +
                 amount_text(one.net, AmountUnit::metre, take.unit) + ", to cut " +
                 amount_text(one.cut, AmountUnit::metre, take.unit) + ", left over " +
                 amount_text(offcuts, AmountUnit::metre, take.unit) + ".";
    }
    text += rolls + "\n" + money_lines(take, costs) + element_table(take) + day_table(days) + "\n";
    for (const std::string& note : take.notes)
        text += "- " + shown_text(note, 300) + "\n";
    for (const std::string& note : days.notes)
        text += "- " + note + "\n";
    return text;
}

} // namespace coilwright
