// The drawings as a DXF file: full size in model space, layers by role.
#pragma once

#include "geometry/views/model_space.hpp"

#include <string>

namespace coilwright {

/// DXF R2000 in inches for designs in feet, else in millimetres ($INSUNITS); x right, y up. Layers
/// and what lies on them: docs/reference/drawings.md. Every entity is drawn by its layer.
/// Dimensions are DIMENSION entities with blocks of their own that carry what they measure as data
/// of the application COILWRIGHT ("opening.door.width"); numbers to 1e-6 of the unit. ASCII. Throws
/// std::runtime_error where a number is not finite.
std::string dxf_text_of(const ModelSpace& space, const MeasureText& measure);

} // namespace coilwright
