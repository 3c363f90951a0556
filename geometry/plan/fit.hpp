// Values that the design leaves to be found: springline, rise, inside diameter.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

struct Fit {
    Design design; // with every "fit" replaced by its value
    std::vector<Fitted> fitted;
    std::vector<Diagnostic> diagnostics; // wishes that cannot be met; their domes turn unsound
};

/// Fits every sound dome: the lowest springline in whole courses that gives the wanted clear height
/// after plaster over a square or circle about the pole; the rise for a wanted apex; the greatest
/// diameter (in whole 1/8 in or mm, by the design's unit) within a floor or outside area.
Fit fit(const Design& design);

} // namespace coilwright
