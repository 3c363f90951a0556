#include "geometry/design/measure.hpp"

#include "geometry/base/quantity.hpp"

#include <array>
#include <charconv>

namespace coilwright {

namespace {

Quantity quantity_of(Measure measure) {
    switch (measure) {
    case Measure::force:
        return Quantity::force;
    case Measure::density:
        return Quantity::density;
    case Measure::unit_weight:
        return Quantity::unit_weight;
    case Measure::line_load:
        return Quantity::line_load;
    case Measure::acceleration:
        return Quantity::acceleration;
    case Measure::mass:
        return Quantity::mass;
    case Measure::volume:
        return Quantity::volume;
    default:
        return Quantity::pressure;
    }
}

} // namespace

std::string measure_name(Measure measure) {
    switch (measure) {
    case Measure::length:
        return "a length";
    case Measure::area:
        return "an area";
    case Measure::number:
        return "a number";
    case Measure::degrees:
        return "a number of degrees";
    case Measure::days:
        return "a number of days";
    case Measure::pressure:
        return "a pressure";
    case Measure::force:
        return "a force";
    case Measure::density:
        return "a density";
    case Measure::unit_weight:
        return "a unit weight";
    case Measure::line_load:
        return "a load per length";
    case Measure::acceleration:
        return "an acceleration";
    case Measure::mass:
        return "a mass";
    case Measure::volume:
        return "a volume";
    }
    return {};
}

bool takes_bare_number(Measure measure) {
    return measure == Measure::length || measure == Measure::area || !takes_text(measure);
}

bool takes_text(Measure measure) {
    return measure != Measure::number && measure != Measure::degrees && measure != Measure::days;
}

double from_bare_number(double number, Measure measure, DisplayUnit unit) {
    if (measure == Measure::length)
        return metres_of(number, unit);
    if (measure == Measure::area && unit == DisplayUnit::feet)
        return number * square_metres_per_square_foot;
    return number;
}

LengthReading read_measure(std::string_view text, Measure measure, DisplayUnit unit) {
    if (measure == Measure::length)
        return read_length(text, unit);
    if (measure == Measure::area)
        return read_area(text, unit);
    return read_quantity(text, quantity_of(measure));
}

std::string short_number(double value) {
    std::array<char, 64> buffer{};
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                      std::chars_format::general, 6);
    return {buffer.data(), result.ptr};
}

std::string measure_text(double value, Measure measure, DisplayUnit unit) {
    switch (measure) {
    case Measure::length:
        return length_text(value, unit);
    case Measure::area:
        return area_text(value, unit);
    case Measure::number:
        return short_number(value);
    case Measure::degrees:
        return short_number(value) + " degrees";
    case Measure::days:
        return short_number(value) + " days";
    default:
        return quantity_text(value, quantity_of(measure), unit);
    }
}

std::string typed_measure(double value, Measure measure, DisplayUnit unit) {
    if (!takes_text(measure))
        return short_number(value);
    return '"' + measure_text(value, measure, unit) + '"';
}

std::string ways_to_type(Measure measure, DisplayUnit unit) {
    const std::string bare = unit == DisplayUnit::feet ? "feet" : "metres";
    switch (measure) {
    case Measure::length:
        return "a length: text in ft, in, m, cm or mm, or a bare number of " + bare;
    case Measure::area:
        return "an area: text in sq ft or m2, or a bare number of square " + bare;
    case Measure::number:
    case Measure::degrees:
    case Measure::days:
        return measure_name(measure) + ", without quotes or unit";
    default:
        return measure_name(measure) + ": text in " + known_units(quantity_of(measure));
    }
}

} // namespace coilwright
