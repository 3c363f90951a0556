#include "exporters/materials.hpp"

#include <cmath>

namespace coilwright {

// Munsell notations through the renotation data (Newhall, Nickerson & Judd 1943) to linear sRGB,
// rounded to 0.01.
const MaterialLook& look(Material material) {
    static const MaterialLook earth{"EARTH", 0.29, 0.18, 0.08, 1, 1};             // 10YR 5/4
    static const MaterialLook earth_cap{"EARTH_CAP", 0.17, 0.11, 0.05, 1, 1};     // 10YR 4/3
    static const MaterialLook plaster{"LIME_PLASTER", 0.82, 0.76, 0.66, 1, 0.9};  // 2.5Y 9/1
    static const MaterialLook render{"EARTH_RENDER", 0.42, 0.28, 0.14, 1, 1};     // 10YR 6/4
    static const MaterialLook floor{"EARTH_FLOOR", 0.21, 0.10, 0.04, 1, 0.5};     // 7.5YR 4/4
    static const MaterialLook timber{"TIMBER", 0.57, 0.40, 0.21, 1, 0.7};         // 10YR 7/4
    static const MaterialLook concrete{"CONCRETE", 0.42, 0.42, 0.42, 1, 0.9};     // N 7
    static const MaterialLook glass{"GLASS", 0.80, 0.86, 0.84, 0.3, 0.05};        // chosen by eye
    static const MaterialLook ground{"GROUND", 0.16, 0.11, 0.07, 1, 1};           // 10YR 4/2
    static const MaterialLook furnishing{"FURNISHING", 0.56, 0.56, 0.56, 1, 0.8}; // N 8/
    switch (material) {
    case Material::earth:
        return earth;
    case Material::earth_cap:
        return earth_cap;
    case Material::lime_plaster:
        return plaster;
    case Material::earth_render:
        return render;
    case Material::earth_floor:
        return floor;
    case Material::timber:
        return timber;
    case Material::concrete:
        return concrete;
    case Material::glass:
        return glass;
    case Material::ground:
        return ground;
    case Material::furnishing:
        return furnishing;
    }
    return earth;
}

double srgb_encoded(double linear) {
    return linear <= 0.0031308 ? 12.92 * linear : 1.055 * std::pow(linear, 1 / 2.4) - 0.055;
}

double srgb_decoded(double encoded) {
    return encoded <= 0.04045 ? encoded / 12.92 : std::pow((encoded + 0.055) / 1.055, 2.4);
}

} // namespace coilwright
