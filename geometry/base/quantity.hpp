// Pressures, forces, densities and the like as people write them, and back. SI everywhere else.
#pragma once

#include "geometry/base/length.hpp"

#include <string>
#include <string_view>

namespace coilwright {

/// Kinds of quantity, each with its SI unit.
enum class Quantity {
    pressure,     // Pa
    force,        // N
    density,      // kg/m3
    unit_weight,  // N/m3
    line_load,    // N/m
    acceleration, // m/s2
    mass,         // kg
    volume,       // m3
};

inline constexpr double newtons_per_pound_force = 4.4482216152605; // exact, from lb and standard g
inline constexpr double kilograms_per_pound = 0.45359237;          // exact
inline constexpr double standard_gravity = 9.80665;                // exact, m/s2

/// Reads a number and its unit: pressure "1500 psf", "2.1 MPa", "311 psi", "75 kPa", "71.8 kN/m2";
/// force "950 lbf", "4.2 kN"; density "110 pcf", "1800 kg/m3"; unit weight "18 kN/m3", "115 pcf";
/// line load "50 plf", "0.7 kN/m"; acceleration "0.2 g", "2 m/s2"; mass
/// "94 lb", "25 kg"; volume "5 gal" (US), "6 cu ft", "60 l". A unit must stand.
/// Worked: "1500 psf" -> 71820.39 Pa.
LengthReading read_quantity(std::string_view text, Quantity quantity);

/// The quantity in the unit customary beside feet or metres, at most six digits: 71820.39 ->
/// "1500 psf" or "71.8204 kPa".
std::string quantity_text(double value, Quantity quantity, DisplayUnit unit);

/// The units that read_quantity knows: "psf, psi, Pa, kPa, MPa, kN/m2".
std::string known_units(Quantity quantity);

} // namespace coilwright
