#include "geometry/base/quantity.hpp"

#include "geometry/base/typed_text.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <vector>

namespace coilwright {

namespace {

constexpr double square_inch = metres_per_inch * metres_per_inch;
constexpr double cubic_foot = metres_per_foot * metres_per_foot * metres_per_foot;

struct KnownUnit {
    const char* written;
    const char* plain; // lower case, as typed_text.hpp reduces it
    double si;
};

// The first is customary beside feet, the second beside metres.
const std::vector<KnownUnit>& units_of(Quantity quantity) {
    static const std::vector<KnownUnit> pressure{
        {"psf", "psf", newtons_per_pound_force / square_metres_per_square_foot},
        {"kPa", "kpa", 1e3},
        {"psi", "psi", newtons_per_pound_force / square_inch},
        {"Pa", "pa", 1},
        {"MPa", "mpa", 1e6},
        {"kN/m2", "kn/m2", 1e3},
        {"N/mm2", "n/mm2", 1e6}};
    static const std::vector<KnownUnit> force{{"lbf", "lbf", newtons_per_pound_force},
                                              {"kN", "kn", 1e3},
                                              {"N", "n", 1},
                                              {"kgf", "kgf", standard_gravity}};
    static const std::vector<KnownUnit> density{
        {"pcf", "pcf", kilograms_per_pound / cubic_foot},
        {"kg/m3", "kg/m3", 1},
        {"lb/ft3", "lb/ft3", kilograms_per_pound / cubic_foot},
        {"t/m3", "t/m3", 1e3}};
    static const std::vector<KnownUnit> unit_weight{
        {"pcf", "pcf", newtons_per_pound_force / cubic_foot},
        {"kN/m3", "kn/m3", 1e3},
        {"lbf/ft3", "lbf/ft3", newtons_per_pound_force / cubic_foot},
        {"N/m3", "n/m3", 1}};
    static const std::vector<KnownUnit> line_load{
        {"plf", "plf", newtons_per_pound_force / metres_per_foot},
        {"kN/m", "kn/m", 1e3},
        {"lbf/ft", "lbf/ft", newtons_per_pound_force / metres_per_foot},
        {"N/m", "n/m", 1}};
    static const std::vector<KnownUnit> acceleration{
        {"g", "g", standard_gravity}, {"g", "g", standard_gravity}, {"m/s2", "m/s2", 1}};
    static const std::vector<KnownUnit> mass{
        {"lb", "lb", kilograms_per_pound}, {"kg", "kg", 1}, {"t", "t", 1e3}};
    static const std::vector<KnownUnit> volume{
        {"cu ft", "cuft", cubic_foot},
        {"l", "l", 1e-3},
        {"gal", "gal", 231 * square_inch * metres_per_inch}, // US
        {"ft3", "ft3", cubic_foot},
        {"cu yd", "cuyd", 27 * cubic_foot},
        {"m3", "m3", 1}};
    switch (quantity) {
    case Quantity::pressure:
        return pressure;
    case Quantity::force:
        return force;
    case Quantity::density:
        return density;
    case Quantity::unit_weight:
        return unit_weight;
    case Quantity::line_load:
        return line_load;
    case Quantity::acceleration:
        return acceleration;
    case Quantity::mass:
        return mass;
    case Quantity::volume:
        return volume;
    }
    return pressure;
}

} // namespace

LengthReading read_quantity(std::string_view text, Quantity quantity) {
    const TypedMeasure measure = read_typed_measure(text);
    if (!measure.fault.empty())
        return {0, measure.fault};
    if (measure.unit.empty())
        return {0, "has no unit"};
    for (const KnownUnit& known : units_of(quantity)) {
        if (measure.unit != known.plain)
            continue;
        const double value = measure.value * known.si;
        if (!std::isfinite(value))
            return {0, "is not a finite number"};
        return {value, {}};
    }
    return {0, "has no unit that is known here"};
}

std::string quantity_text(double value, Quantity quantity, DisplayUnit unit) {
    const KnownUnit& shown = units_of(quantity)[unit == DisplayUnit::feet ? 0 : 1];
    std::array<char, 64> buffer{};
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(),
                                      value / shown.si, std::chars_format::general, 6);
    return std::string(buffer.data(), result.ptr) + " " + shown.written;
}

std::string known_units(Quantity quantity) {
    std::string list;
    const char* last = "";
    for (const KnownUnit& known : units_of(quantity)) {
        if (std::string_view(last) == known.written)
            continue;
        list += (list.empty() ? "" : ", ") + std::string(known.written);
        last = known.written;
    }
    return list;
}

} // namespace coilwright
