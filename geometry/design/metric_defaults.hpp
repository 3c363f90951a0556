// Defaults of designs in metres: round in millimetres where those of a design in feet are round in inches.
#pragma once

#include "geometry/design/design.hpp"

namespace coilwright {

/// Ends of 200 mm, joints 450 mm apart, tubes of 9 m, wire laps of 600 mm, the ground 150 mm below the
/// floor. To be called before the tables are read: what they say wins. Nothing for feet.
void take_metric_defaults(Design& design);

} // namespace coilwright
