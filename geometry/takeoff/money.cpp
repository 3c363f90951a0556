#include "geometry/takeoff/money.hpp"

#include "geometry/base/nearest_word.hpp"
#include "geometry/base/quantity.hpp"
#include "geometry/takeoff/amount_text.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

/// Uniform in [0, 1): splitmix64 (Steele, Lea & Flood 2014), the upper 53 bits.
class Draw {
public:
    explicit Draw(std::uint64_t seed) : state_(seed) {}
    double next() {
        std::uint64_t z = (state_ += 0x9e3779b97f4a7c15U);
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9U;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebU;
        z ^= z >> 31;
        return static_cast<double>(z >> 11) * 0x1p-53;
    }

private:
    std::uint64_t state_;
};

AmountUnit measured_by(PriceUnit unit) {
    switch (unit) {
    case PriceUnit::metre:
    case PriceUnit::foot:
        return AmountUnit::metre;
    case PriceUnit::square_metre:
    case PriceUnit::square_foot:
        return AmountUnit::square_metre;
    case PriceUnit::cubic_metre:
    case PriceUnit::cubic_yard:
        return AmountUnit::cubic_metre;
    case PriceUnit::kilogram:
    case PriceUnit::pound:
    case PriceUnit::tonne:
        return AmountUnit::kilogram;
    case PriceUnit::litre:
    case PriceUnit::gallon:
        return AmountUnit::litre;
    case PriceUnit::hour:
    case PriceUnit::day:
        return AmountUnit::day;
    case PriceUnit::pack:
    case PriceUnit::piece:
        return AmountUnit::piece;
    }
    return AmountUnit::piece;
}

double size_of(PriceUnit unit, double hours) {
    switch (unit) {
    case PriceUnit::foot:
        return metres_per_foot;
    case PriceUnit::square_foot:
        return square_metres_per_square_foot;
    case PriceUnit::cubic_yard:
        return cubic_metres_per_cubic_yard;
    case PriceUnit::pound:
        return kilograms_per_pound;
    case PriceUnit::tonne:
        return 1000;
    case PriceUnit::gallon:
        return litres_per_gallon;
    case PriceUnit::hour:
        return 1 / hours;
    default:
        return 1;
    }
}

Diagnostic other_unit(const Price& price, const TakeOffItem& item) {
    std::string fits;
    for (int unit = 0; unit <= static_cast<int>(PriceUnit::day); ++unit)
        if (priced_quantity(item, static_cast<PriceUnit>(unit), 8))
            fits += (fits.empty() ? "" : ", ") + word(static_cast<PriceUnit>(unit));
    return {"price-of-other-unit",
            price.place,
            "price." + price.item + ".per",
            "The price of " + item.name + " is per " + word(price.per) +
                ", which does not measure it.",
            fits,
            "per = \"" + fits.substr(0, fits.find(',')) + "\"",
            ""};
}

/// Splits each item's cost over its lines by their amounts.
template <typename Name>
std::vector<CostShare> shares(const TakeOff& take, const Costs& costs, Name name_of) {
    std::vector<CostShare> list;
    std::map<std::string, std::pair<double, double>> items; // cost, amount
    for (const ItemCost& cost : costs.items)
        items[cost.item] = {cost.cost.likely, find_item(take, cost.item)->amount};
    for (const TakeOffLine& line : take.lines) {
        const auto item = items.find(line.item);
        if (item == items.end() || item->second.second <= 0)
            continue;
        const std::string name = name_of(line);
        auto found = std::find_if(list.begin(), list.end(),
                                  [&](const CostShare& one) { return one.name == name; });
        if (found == list.end())
            found = list.insert(list.end(), CostShare{name, 0, 0});
        found->likely += item->second.first * line.amount / item->second.second;
    }
    for (CostShare& one : list)
        one.share = costs.total.likely > 0 ? one.likely / costs.total.likely : 0;
    return list;
}

Simulated simulate(const Costs& costs, std::uint64_t seed, int draws) {
    Simulated result;
    result.seed = seed;
    result.draws = draws;
    if (costs.items.empty() || draws < 1)
        return result;
    Draw draw(seed);
    std::vector<double> totals;
    totals.reserve(static_cast<std::size_t>(draws));
    double sum = 0;
    for (int i = 0; i < draws; ++i) {
        double total = 0;
        for (const ItemCost& item : costs.items)
            total += item.quantity * triangle_at(item.price, draw.next());
        totals.push_back(total);
        sum += total;
    }
    std::sort(totals.begin(), totals.end());
    const auto at = [&](double share) {
        return totals[static_cast<std::size_t>(share * (static_cast<double>(draws) - 1) + 0.5)];
    };
    result.tenth = at(0.1);
    result.middle = at(0.5);
    result.nine_tenths = at(0.9);
    result.mean = sum / draws;
    return result;
}

} // namespace

double triangle_at(const MoneyRange& range, double share) {
    const double span = range.high - range.low;
    if (span <= 0)
        return range.likely;
    const double turn = (range.likely - range.low) / span;
    if (share < turn)
        return range.low + std::sqrt(share * span * (range.likely - range.low));
    return range.high - std::sqrt((1 - share) * span * (range.high - range.likely));
}

std::optional<double> priced_quantity(const TakeOffItem& item, PriceUnit unit, double hours) {
    if (unit == PriceUnit::pack)
        return item.pack.empty() ? std::nullopt : std::optional<double>(item.packs);
    if (measured_by(unit) != item.unit)
        return std::nullopt;
    return item.to_buy / size_of(unit, hours);
}

const ItemCost* find_cost(const Costs& costs, const std::string& item) {
    for (const ItemCost& cost : costs.items)
        if (cost.item == item)
            return &cost;
    return nullptr;
}

std::vector<Diagnostic> faults_of_tube_prices(const Design& design, const Works& works) {
    const auto has_price = [&](const TubeType& tube) {
        return std::any_of(works.prices.begin(), works.prices.end(),
                           [&](const Price& price) { return price.item == "tube-" + tube.id; });
    };
    std::vector<std::string> all, unpriced;
    for (const TubeType& tube : design.tubes) {
        all.push_back(tube.id);
        if (!has_price(tube))
            unpriced.push_back(tube.id);
    }
    std::vector<Diagnostic> faults;
    for (const Price& price : works.prices) {
        const std::string id = price.item.rfind("tube-", 0) == 0 ? price.item.substr(5) : "";
        if (id.empty() || std::find(all.begin(), all.end(), id) != all.end())
            continue;
        if (const auto meant = nearest_word(id, unpriced))
            faults.push_back(
                {"unknown-word", price.place, "price." + price.item,
                 "The design has no tube '" + id + "', and its tube '" + *meant + "' has no price.",
                 "the name of a tube of the design", "[price.tube-" + *meant + "]", ""});
    }
    return faults;
}

Costs work_out_costs(const TakeOff& take, const Works& works, std::uint64_t seed, int draws) {
    Costs costs;
    costs.currency = works.currency;
    for (const TakeOffItem& item : take.items) {
        const auto price = std::find_if(works.prices.begin(), works.prices.end(),
                                        [&](const Price& one) { return one.item == item.code; });
        if (price == works.prices.end()) {
            costs.unpriced.push_back(item.name);
            continue;
        }
        const auto quantity = priced_quantity(item, price->per, works.crew.hours);
        if (!quantity) {
            costs.diagnostics.push_back(other_unit(*price, item));
            continue;
        }
        ItemCost cost{item.code,
                      item.name,
                      *quantity,
                      word(price->per),
                      {price->low, price->likely, price->high},
                      {},
                      0,
                      price->source,
                      price->date};
        cost.cost = {*quantity * price->low, *quantity * price->likely, *quantity * price->high};
        costs.total.low += cost.cost.low;
        costs.total.likely += cost.cost.likely;
        costs.total.high += cost.cost.high;
        costs.items.push_back(std::move(cost));
    }
    for (ItemCost& item : costs.items)
        item.share = costs.total.likely > 0 ? item.cost.likely / costs.total.likely : 0;
    costs.by_element = shares(take, costs, [](const TakeOffLine& line) { return line.element; });
    costs.by_phase = shares(take, costs, [](const TakeOffLine& line) { return word(line.phase); });
    if (take.floor_area > 0)
        costs.per_floor_area = costs.total.likely / take.floor_area;
    costs.simulated = simulate(costs, seed, draws);
    return costs;
}

} // namespace coilwright
