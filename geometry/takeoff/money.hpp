// What a take-off costs at the prices of a works file.
#pragma once

#include "geometry/takeoff/take_off.hpp"

#include <cstdint>
#include <string>
#include <vector>

namespace coilwright {

/// Low, likely and high in the currency of the works file.
struct MoneyRange {
    double low = 0, likely = 0, high = 0;
};

struct ItemCost {
    std::string item, name;
    double quantity = 0; // of what is bought, in the price's unit
    std::string per;     // "pack", "cu yd"
    MoneyRange price, cost;
    double share = 0; // of the likely total
    std::string source, date;
};

/// Of an element or a phase: what its lines are of each item's amount, at the likely price.
struct CostShare {
    std::string name;
    double likely = 0, share = 0;
};

/// Totals of many draws: what one in ten, half and nine in ten stay under.
struct Simulated {
    double tenth = 0, middle = 0, nine_tenths = 0, mean = 0;
    int draws = 0;
    std::uint64_t seed = 0;
};

struct Costs {
    std::string currency;
    std::vector<ItemCost> items;       // in the order of the take-off
    std::vector<std::string> unpriced; // names of items without a price
    std::vector<CostShare> by_element, by_phase;
    MoneyRange total;
    double per_floor_area =
        0; // likely total over the floor between the bags, a m2; 0 without a floor
    Simulated simulated;
    std::vector<Diagnostic> diagnostics; // a price per what the item is not bought by
};

/// Whole packs are paid for. A price whose unit does not measure its item is the diagnostic
/// "price-of-other-unit" and is left out. The simulation draws every price from the triangle of its
/// low, likely and high, each by itself, from a generator of our own: the same seed, the same
/// bytes.
Costs work_out_costs(const TakeOff& take, const Works& works, std::uint64_t seed = 1,
                     int draws = 2000);

/// The cost of an item by its code; null where it has no price.
const ItemCost* find_cost(const Costs& costs, const std::string& item);

/// Of prices of tubes ("price.tube-NAME") that the design does not have but for a slip in the name
/// of one without a price: the diagnostics "unknown-word". One works file may serve several
/// designs: others are told in a note of the take-off.
std::vector<Diagnostic> faults_of_tube_prices(const Design& design, const Works& works);

/// How many of the price's unit an item is; nothing where they measure different things.
std::optional<double> priced_quantity(const TakeOffItem& item, PriceUnit unit, double hours);

/// The value under which a share of the triangle from low over likely to high lies.
/// 0, 1, 2 at 0.5 -> 1.
double triangle_at(const MoneyRange& range, double share);

} // namespace coilwright
