#include "geometry/takeoff/amount_text.hpp"

#include "geometry/base/quantity.hpp"

#include <cmath>

namespace coilwright {

double shown_amount(double amount, AmountUnit unit, DisplayUnit shown) {
    if (shown == DisplayUnit::metres)
        return amount;
    switch (unit) {
    case AmountUnit::metre:
        return amount / metres_per_foot;
    case AmountUnit::square_metre:
        return amount / square_metres_per_square_foot;
    case AmountUnit::cubic_metre:
        return amount / cubic_metres_per_cubic_yard;
    case AmountUnit::kilogram:
        return amount / kilograms_per_pound;
    case AmountUnit::litre:
        return amount / litres_per_gallon;
    case AmountUnit::piece:
    case AmountUnit::day:
        return amount;
    }
    return amount;
}

std::string shown_unit(AmountUnit unit, DisplayUnit shown) {
    const bool feet = shown == DisplayUnit::feet;
    switch (unit) {
    case AmountUnit::metre:
        return feet ? "ft" : "m";
    case AmountUnit::square_metre:
        return feet ? "sq ft" : "m²";
    case AmountUnit::cubic_metre:
        return feet ? "cu yd" : "m³";
    case AmountUnit::kilogram:
        return feet ? "lb" : "kg";
    case AmountUnit::litre:
        return feet ? "gal" : "l";
    case AmountUnit::piece:
        return "pcs";
    case AmountUnit::day:
        return "days";
    }
    return {};
}

std::string amount_text(double amount, AmountUnit unit, DisplayUnit shown) {
    const double value = shown_amount(amount, unit, shown);
    const int decimals = unit == AmountUnit::piece ? 0
                         : std::abs(value) < 100   ? (std::abs(value) < 1 ? 2 : 1)
                                                   : 0;
    return fixed_text(value, decimals) + " " + shown_unit(unit, shown);
}

std::string purchase_text(const TakeOffItem& item, DisplayUnit shown) {
    if (item.pack.empty())
        return amount_text(item.to_buy, item.unit, shown);
    return std::to_string(item.packs) + " " + item.pack + (item.packs == 1 ? "" : "s") + " of " +
           amount_text(item.pack_size, item.unit, shown);
}

std::string money_text(double amount, const std::string& currency) {
    std::string digits = fixed_text(amount, 0);
    const std::size_t first = digits[0] == '-' ? 1 : 0;
    for (std::size_t at = digits.size(); at > first + 3;)
        digits.insert(at -= 3, ",");
    return (currency.empty() ? "" : currency + " ") + digits;
}

} // namespace coilwright
