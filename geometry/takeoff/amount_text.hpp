// Amounts as people read them, in the design's unit.
#pragma once

#include "geometry/base/length.hpp"
#include "geometry/takeoff/take_off.hpp"

#include <string>

namespace coilwright {

inline constexpr double cubic_metres_per_cubic_yard =
    27 * metres_per_foot * square_metres_per_square_foot;
inline constexpr double litres_per_gallon = 3.785411784; // US

/// An amount with its unit: 12.3 m -> "40.4 ft" or "12.3 m"; m2 -> "sq ft" or "m²"; m3 -> "cu yd"
/// or "m³"; kg -> "lb" or "kg"; l -> "gal" (US) or "l"; pieces and days bare with their word.
std::string amount_text(double amount, AmountUnit unit, DisplayUnit shown);
/// The number of that text, and its unit, apart.
double shown_amount(double amount, AmountUnit unit, DisplayUnit shown);
std::string shown_unit(AmountUnit unit, DisplayUnit shown);

/// "12 bags", "1 roll", or the amount where it comes in no packs.
std::string purchase_text(const TakeOffItem& item, DisplayUnit shown);

/// "shells 1,234": whole units, thousands apart.
std::string money_text(double amount, const std::string& currency);

} // namespace coilwright
