// The curve of a drawn profile: a monotone cubic through a table of heights and half-widths.
#pragma once

#include "geometry/plan/profile.hpp"

#include <utility>
#include <vector>

namespace coilwright {

/// Knots with slopes dx/dy such that the cubic through them never grows where the table does not.
/// Three-point slopes, limited by Fritsch and Carlson, "Monotone piecewise cubic interpolation",
/// SIAM J. Numer. Anal. 17 (1980) 238-246. Preconditions: at least two points, heights increasing,
/// half-widths not growing.
std::vector<Profile::Knot> monotone_knots(const std::vector<std::pair<double, double>>& points);

/// One span of the curve, between two neighbouring knots, as x(t) = x0 + t (c1 + t (c2 + t c3))
/// with t = (y - y0) / height in [0, 1].
struct CubicSpan {
    double y0 = 0, height = 0;
    double x0 = 0, c1 = 0, c2 = 0, c3 = 0;
    double value(double y) const;
    double slope(double y) const; // dx/dy
};
CubicSpan span_above(const std::vector<Profile::Knot>& knots, std::size_t knot);

/// x(y), dx/dy and the greatest y with x(y) >= x, within the table's heights and half-widths.
double drawn_value(const std::vector<Profile::Knot>& knots, double height);
double drawn_slope(const std::vector<Profile::Knot>& knots, double height);
double drawn_height_at(const std::vector<Profile::Knot>& knots, double half_width);

} // namespace coilwright
