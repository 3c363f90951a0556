// How the model's materials look: one table for every format.
#pragma once

#include "geometry/solids/solid_model.hpp"

#include <string>

namespace coilwright {

/// A matt surface. Reflectances are linear (0: black, 1: all light comes back), of red, green and
/// blue with the primaries of sRGB. Values and where they come from: docs/reference/formats.md.
struct MaterialLook {
    std::string name; // slug: "EARTH"
    double red = 0, green = 0, blue = 0;
    double opacity = 1;
    double roughness = 1;
};

const MaterialLook& look(Material material);

/// The sRGB value of a linear reflectance (IEC 61966-2-1): 0.5 -> 0.735357.
double srgb_encoded(double linear);
/// The other way: 0.735357 -> 0.5.
double srgb_decoded(double encoded);

} // namespace coilwright
