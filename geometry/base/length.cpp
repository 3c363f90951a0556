#include "geometry/base/length.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

namespace coilwright {

namespace {

// Rounds halves away from zero; what lies within 1e-9 of a half (the error of a metre held in
// binary) counts as a half.
double rounded(double value) {
    const double magnitude = std::floor(std::abs(value) + 0.5 + 1e-9);
    return value < 0 ? -magnitude : magnitude;
}

// Beyond this a double no longer holds every eighth of an inch.
constexpr double greatest_metres = 1e12;

bool can_be_shown(double metres) {
    return std::abs(metres) <= greatest_metres;
}

std::string whole_text(long long value) {
    return std::to_string(value);
}

} // namespace

std::string fixed_text(double value, int decimals) {
    std::array<char, 400> buffer{}; // the greatest double has 309 digits before the point
    const auto result = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                      std::chars_format::fixed, decimals);
    std::string text(buffer.data(), result.ptr);
    const bool is_zero = text.find_first_not_of("-0.") == std::string::npos;
    return is_zero && text.front() == '-' ? text.substr(1) : text;
}

std::string trimmed_text(double value, int decimals) {
    std::string text = fixed_text(value, decimals);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text.pop_back();
    return text;
}

std::string feet_and_inches(double metres, int denominator) {
    if (!can_be_shown(metres))
        return fixed_text(metres, 0) + " m";
    const double steps = rounded(metres * 10000 * denominator / 254);
    const auto count = static_cast<long long>(std::abs(steps));
    const long long per_foot = 12LL * denominator;
    const long long feet = count / per_foot;
    const long long inches = count % per_foot / denominator;
    const long long above = count % denominator;
    std::string text = steps < 0 ? "-" : "";
    if (feet > 0)
        text += whole_text(feet) + " ft ";
    if (feet > 0 || inches > 0 || above == 0)
        text += whole_text(inches) + (above > 0 ? "-" : "");
    if (above > 0) {
        const long long common = std::gcd(above, static_cast<long long>(denominator));
        text += whole_text(above / common) + "/" + whole_text(denominator / common);
    }
    return text + " in";
}

std::string millimetres(double metres, int decimals) {
    if (!can_be_shown(metres))
        return fixed_text(metres, 0) + " m";
    const double scale = std::pow(10.0, decimals);
    return fixed_text(rounded(metres * 1000 * scale) / scale, decimals) + " mm";
}

std::string length_text(double metres, DisplayUnit unit) {
    return unit == DisplayUnit::feet ? feet_and_inches(metres) : millimetres(metres);
}

std::string area_text(double square_metres, DisplayUnit unit) {
    if (unit == DisplayUnit::feet)
        return fixed_text(square_metres / square_metres_per_square_foot, 1) + " sq ft";
    return fixed_text(square_metres, 2) + " m²";
}

std::string volume_text(double cubic_metres, DisplayUnit unit) {
    constexpr double cubic_foot = metres_per_foot * metres_per_foot * metres_per_foot;
    if (unit == DisplayUnit::feet)
        return fixed_text(cubic_metres / cubic_foot, 1) + " cu ft";
    return fixed_text(cubic_metres, 3) + " m³";
}

} // namespace coilwright
