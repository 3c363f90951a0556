// What a key of the design file measures: how it is read, shown and bounded.
#pragma once

#include "geometry/base/length.hpp"

#include <string>
#include <string_view>

namespace coilwright {

enum class Measure {
    length,
    area,
    number,  // a bare number without unit
    degrees, // a bare number
    days,    // a bare number
    pressure,
    force,
    density,
    unit_weight,
    line_load,
    acceleration,
    mass,
    volume,
};

/// "a length", "a pressure", ...
std::string measure_name(Measure measure);
/// Whether a bare number may stand for it: numbers, degrees, days, and lengths and areas in the
/// file's unit.
bool takes_bare_number(Measure measure);
/// Whether a text may stand for it.
bool takes_text(Measure measure);
/// A bare number in SI. Precondition: takes_bare_number.
double from_bare_number(double number, Measure measure, DisplayUnit unit);
/// A text in SI. Precondition: takes_text.
LengthReading read_measure(std::string_view text, Measure measure, DisplayUnit unit);
/// A value as a person reads it: "9 ft 0 in", "150 degrees", "0.5".
std::string measure_text(double value, Measure measure, DisplayUnit unit);
/// A value as it is typed in the file: "\"9 ft 0 in\"", "150", "0.5".
std::string typed_measure(double value, Measure measure, DisplayUnit unit);
/// What may be typed: "a length: text with its unit, or a bare number of feet".
std::string ways_to_type(Measure measure, DisplayUnit unit);

/// A number in the fewest digits, at most six: 0.5 -> "0.5", 150 -> "150".
std::string short_number(double value);

} // namespace coilwright
