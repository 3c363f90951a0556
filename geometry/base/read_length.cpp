#include "geometry/base/length.hpp"
#include "geometry/base/typed_text.hpp"

#include <cmath>

namespace coilwright {

namespace {

constexpr double greatest_length = 10000; // m

enum class Unit { none, foot, inch, metre, centimetre, millimetre };

bool is_metric(Unit unit) {
    return unit == Unit::metre || unit == Unit::centimetre || unit == Unit::millimetre;
}

Unit unit_of(const std::string& word) {
    if (word == "ft" || word == "foot" || word == "feet")
        return Unit::foot;
    if (word == "in" || word == "inch" || word == "inches")
        return Unit::inch;
    if (word == "m" || word == "metre" || word == "metres" || word == "meter" || word == "meters")
        return Unit::metre;
    if (word == "cm" || word == "centimetre" || word == "centimetres" || word == "centimeter" ||
        word == "centimeters")
        return Unit::centimetre;
    if (word == "mm" || word == "millimetre" || word == "millimetres" || word == "millimeter" ||
        word == "millimeters")
        return Unit::millimetre;
    return Unit::none;
}

// How many of a unit make the greater unit of its system; inches and millimetres are the smallest.
double in_smallest(Unit unit) {
    switch (unit) {
    case Unit::foot:
        return 12;
    case Unit::metre:
        return 1000;
    case Unit::centimetre:
        return 10;
    default:
        return 1;
    }
}

LengthReading fault(const std::string& text) {
    return {0, text};
}

struct TakenUnit {
    Unit unit = Unit::none;
    bool written = false;
    std::string fault;
};

TakenUnit take_unit(TypedScanner& scanner) {
    scanner.skip_spaces();
    if (scanner.take('"'))
        return {Unit::inch, true, {}};
    if (scanner.take('\''))
        return {scanner.take('\'') ? Unit::inch : Unit::foot, true, {}};
    const std::string word = scanner.take_word();
    if (word.empty())
        return {};
    scanner.take('.');
    const Unit unit = unit_of(word);
    if (unit == Unit::none)
        return {unit, true, "has the unknown unit \"" + word + "\""};
    return {unit, true, {}};
}

// The sum of the parts read so far ("8 ft", then "6 in"), in the system's smallest unit.
struct Sum {
    double smallest = 0;
    Unit last = Unit::none;
    bool last_whole = true;
};

std::string add_part(Sum& sum, const TypedNumber& number, Unit unit) {
    if (sum.last != Unit::none) {
        if (is_metric(unit) != is_metric(sum.last))
            return "mixes metric units with feet and inches";
        if (unit == sum.last)
            return "names one unit twice";
        if (in_smallest(unit) > in_smallest(sum.last))
            return "names a smaller unit before a greater one";
        if (!sum.last_whole)
            return "has a fraction in a part that another part follows";
        if (number.value * in_smallest(unit) >= in_smallest(sum.last))
            return "has a smaller part that makes up one or more of the greater unit";
    }
    sum.smallest += number.value * in_smallest(unit);
    sum.last = unit;
    sum.last_whole = number.whole;
    return {};
}

// One correctly rounded division, so that 5-1/2 in is the double nearest to 0.1397.
double in_metres(const Sum& sum, double single_value, bool single) {
    if (single && sum.last == Unit::metre)
        return single_value;
    if (single && sum.last == Unit::centimetre)
        return single_value / 100;
    if (single && sum.last == Unit::foot)
        return single_value * 3048 / 10000;
    return is_metric(sum.last) ? sum.smallest / 1000 : sum.smallest * 254 / 10000;
}

} // namespace

double metres_of(double value, DisplayUnit unit) {
    return unit == DisplayUnit::feet ? value * 3048 / 10000 : value;
}

LengthReading read_length(std::string_view text, DisplayUnit bare) {
    if (std::string found = fault_of_typed(text); !found.empty())
        return fault(found);
    const std::string plain = plain_typed_text(text);
    TypedScanner scanner(plain);
    scanner.skip_spaces();
    const bool negative = scanner.take_sign();
    Sum sum;
    int parts = 0;
    double first = 0;
    bool ends_in_separator = false, is_bare = false;
    do {
        const TypedNumber number = scanner.take_number();
        if (!number.fault.empty())
            return fault(ends_in_separator && scanner.at_end() ? "ends in a separator"
                                                               : number.fault);
        TakenUnit taken = take_unit(scanner);
        if (!taken.fault.empty())
            return fault(taken.fault);
        scanner.skip_spaces();
        if (!taken.written) {
            if (!scanner.at_end() || (parts > 0 && sum.last != Unit::foot))
                return fault(parts > 0 || scanner.peek() == '-' || scanner.peek() == ','
                                 ? "has a number without its unit"
                                 : "has a character that no length has");
            is_bare = parts == 0;
            taken.unit = parts > 0                   ? Unit::inch
                         : bare == DisplayUnit::feet ? Unit::foot
                                                     : Unit::metre;
        }
        if (std::string found = add_part(sum, number, taken.unit); !found.empty())
            return fault(found);
        if (parts++ == 0)
            first = number.value;
        ends_in_separator = scanner.take(',') || scanner.take('-');
        scanner.skip_spaces();
    } while (!scanner.at_end() || ends_in_separator);
    const double metres = in_metres(sum, first, parts == 1);
    if (!std::isfinite(metres) || metres > greatest_length)
        return fault("is over 10 km");
    return {negative ? 0 - metres : metres, {}, is_bare};
}

LengthReading read_area(std::string_view text, DisplayUnit bare) {
    const TypedMeasure measure = read_typed_measure(text);
    if (!measure.fault.empty())
        return fault(measure.fault);
    const std::string& unit = measure.unit;
    const bool feet = unit == "sqft" || unit == "ft2" || unit == "sqfeet" || unit == "sqfoot" ||
                      unit == "squarefeet" || unit == "squarefoot" || unit == "sf" ||
                      (unit.empty() && bare == DisplayUnit::feet);
    const bool metres = unit == "sqm" || unit == "m2" || unit == "squaremetres" ||
                        unit == "squaremetre" || unit == "squaremeters" || unit == "squaremeter" ||
                        (unit.empty() && bare == DisplayUnit::metres);
    if (!feet && !metres)
        return fault("has no unit of area that is known");
    const double value = feet ? measure.value * 9290304 / 1e8 : measure.value;
    if (!(std::abs(value) <= greatest_length * greatest_length))
        return fault("is over 100 square kilometres");
    return {value, {}, unit.empty()};
}

} // namespace coilwright
