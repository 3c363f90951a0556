// Scales of drawings: those on a scale rule, and no others.
#pragma once

#include "geometry/base/length.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// One to `per`.
struct Scale {
    int per = 50;
    std::string text; // "1:50", or with feet "1/4 in = 1 ft (1:48)"
    /// Millimetres on paper for metres in the building: at 1:50, 2 m -> 40 mm.
    double on_paper(double metres) const { return metres * 1000 / per; }
};

/// The largest scale at which `width` by `height` metres fit in that many millimetres. In metres:
/// 1:1, 1:2, 1:5, 1:10, 1:20, 1:25, 1:50, 1:75, 1:100 and on (ISO 5455 and the triangular scale
/// rule); in feet: 6 in, 3 in, 1-1/2 in, 1 in, 3/4 in ... 1/16 in to the foot. Beyond 1:20000 the
/// drawing is larger than the paper.
Scale largest_scale(double width, double height, double paper_width, double paper_height,
                    DisplayUnit unit);

/// The scales of a unit, the largest first.
const std::vector<Scale>& standard_scales(DisplayUnit unit);

} // namespace coilwright
