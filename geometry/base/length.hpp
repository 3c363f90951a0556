// Lengths as people write them, and back. Held in metres everywhere else.
#pragma once

#include <string>
#include <string_view>

namespace coilwright {

inline constexpr double metres_per_inch = 0.0254; // exact, by the international yard of 1959
inline constexpr double metres_per_foot = 0.3048;
inline constexpr double square_metres_per_square_foot = metres_per_foot * metres_per_foot;

/// How bare numbers are read and how results are shown.
enum class DisplayUnit { feet, metres };

/// A length read from text, or why it could not be read (`fault` empty: it was read).
struct LengthReading {
    double value = 0;  // metres, or square metres from read_area
    std::string fault; // what was found wrong, as the second half of a sentence
    bool bare = false; // no unit was typed: read in that of the file
};

/// Reads one length: "8 ft 6-1/2 in", "8' 6 1/2\"", "5-1/2 in", "2.44 m", "380 mm", "38 cm", ASCII
/// hyphens or Unicode dashes, primes, vulgar fractions and spaces as phones type them, a leading
/// minus for the whole. A bare number is in `bare` (feet or metres), after feet in inches ("8ft6").
/// Not locale dependent. Fails on empty text, unknown units, repeated, unordered or mixed units, a
/// fraction of a foot beside inches, 12 in or more beside feet, a comma within a number, a
/// denominator of 0, values beyond 10 km. Worked: "5-1/2 in" -> 0.1397, the nearest double.
LengthReading read_length(std::string_view text, DisplayUnit bare);

/// A bare number of the design file in metres: (9, feet) -> 2.7432, (2.44, metres) -> 2.44.
double metres_of(double value, DisplayUnit unit);

/// Reads an area: "120 sq ft", "120 ft2", "120 ft²", "11 m2", "11 sq m"; bare in `bare` squared.
LengthReading read_area(std::string_view text, DisplayUnit bare);

/// Feet, inches and fractions, to the nearest 1/8 in by default: 2.6035 -> "8 ft 6-1/2 in",
/// 2.7432 -> "9 ft 0 in", 0.1397 -> "5-1/2 in", 0 -> "0 in", negative with a leading "-".
/// `denominator` is 1, 2, 4, 8 or 16; halves go away from zero. Beyond 10^12 m, where a double no
/// longer holds eighths of an inch, whole metres: "2000000000000 m"; so too millimetres.
std::string feet_and_inches(double metres, int denominator = 8);
/// Whole millimetres: 2.6035 -> "2604 mm" (halves away from zero). `decimals` 0 to 3.
std::string millimetres(double metres, int decimals = 0);
/// feet_and_inches or millimetres by the unit of the design.
std::string length_text(double metres, DisplayUnit unit);
/// "50.3 sq ft" (one decimal) or "4.67 m²" (two).
std::string area_text(double square_metres, DisplayUnit unit);
/// "12.3 cu ft" (one decimal) or "0.348 m³" (three).
std::string volume_text(double cubic_metres, DisplayUnit unit);

/// A number with a fixed count of decimals, '.' in every locale, no "-0": (-0.04, 1) -> "0.0".
std::string fixed_text(double value, int decimals);
/// The same without the noughts at its end: (12.50, 2) -> "12.5", (3, 2) -> "3". At least one
/// decimal.
std::string trimmed_text(double value, int decimals);

} // namespace coilwright
