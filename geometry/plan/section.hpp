// The cross-section of a tamped tube: a stadium.
#pragma once

#include "geometry/design/design.hpp"

namespace coilwright {

/// w = L - (pi/2 - 1) t: the fabric does not stretch, so the stadium's perimeter is 2 L.
/// L 0.45, t 0.15 -> 0.364381.
double stadium_width(double lay_flat, double course_height);
/// A = (w - t) t + pi t^2 / 4. w 0.364381, t 0.15 -> 0.049829.
double stadium_area(double width, double course_height);
/// The tamped width of a tube type: as measured where stated, else stadium_width.
double tamped_width(const TubeType& tube, double course_height);

} // namespace coilwright
