// Bare numbers that were meant in another unit than the file's: `width = 32` of a door in inches.
#pragma once

#include "geometry/base/length.hpp"

#include <string>

namespace coilwright {

/// What a length may be and usually is, in metres.
struct UsualLength {
    double low, high; // ordinary values
    double example;   // one of them
};

/// The number with the smaller unit in which it would be ordinary, as text without quotes: inches
/// before centimetres and millimetres in a file in feet, and of the two metric ones the nearer to
/// the example; empty where it would be in none, or less than an eighth of the example.
/// (32, {0.05, 4, 0.81}, feet) -> "32 in"; (800, the same, metres) -> "800 mm".
std::string with_forgotten_unit(double number, const UsualLength& usual, DisplayUnit unit);

} // namespace coilwright
