// The sheets of take-off.xlsx that list: purchases, amounts, days, courses, rolls.
#pragma once

#include "exporters/listing_sheet.hpp"
#include "geometry/takeoff/amount_text.hpp"
#include "geometry/takeoff/days.hpp"
#include "geometry/takeoff/money.hpp"

namespace coilwright::take_off_sheets {

namespace buy_column {
enum : std::size_t {
    item,
    name,
    unit,
    needed,
    waste,
    with_waste,
    pack,
    pack_size,
    packs,
    to_buy,
    per,
    quantity,
    low,
    likely,
    high,
    cost_low,
    cost,
    cost_high,
    share,
    source,
    date,
    how
};
} // namespace buy_column
namespace line_column {
enum : std::size_t { item, name, element, phase, what, amount, unit, how, figures, cost };
} // namespace line_column

inline const std::string money = "#,##0", price = "#,##0.00", percent = "0.0%", amount = "#,##0.00",
                         count = "0";

/// " (shells)", or nothing without a currency.
std::string in_currency(const Costs& costs);
/// What a line is of its item's likely cost; 0 without a price.
double cost_of_line(const TakeOff& take, const Costs& costs, const TakeOffLine& line);

WorkSheet buy_sheet(const TakeOff& take, const Costs& costs);
WorkSheet amounts_sheet(const TakeOff& take, const Costs& costs);
WorkSheet days_sheet(const TakeOff& take, const DayPlan& days);
WorkSheet courses_sheet(const TakeOff& take);
WorkSheet rolls_sheet(const TakeOff& take);
WorkSheet pieces_sheet(const TakeOff& take);

} // namespace coilwright::take_off_sheets
