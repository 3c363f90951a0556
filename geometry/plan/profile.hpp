// Curves of half-width against height above the springline. Revolved about the pole a profile is a
// dome, extruded it is a tunnel, cut off at the jambs it is an opening's head.
#pragma once

#include "geometry/design/design.hpp"

#include <vector>

namespace coilwright {

/// A curve x(y): half-width x against height y above the springline, in metres. x(0) = half_span,
/// x(rise) = 0; below y = 0 it is plumb at half_span. Made by the functions below, which set
/// `radius` (pointed, round, segmental: of the arc; catenary: its parameter c; else 0) and, for a
/// drawn profile, its knots with their slopes dx/dy (monotone cubic of Fritsch and Carlson 1980).
struct Profile {
    ProfileKind kind = ProfileKind::round;
    double half_span = 0;
    double rise = 0;
    double radius = 0;
    struct Knot {
        double height, half_width, slope;
    };
    std::vector<Knot> knots;
};

/// Two-centred arch, rho = (a^2 + h^2) / (2 a), h >= a: a 1, h sqrt 3 -> rho 2.
Profile pointed_profile(double half_span, double rise);
Profile round_profile(double half_span);
/// One circle of radius (a^2 + h^2) / (2 h), 0 < h <= a.
Profile segmental_profile(double half_span, double rise);
Profile catenary_profile(double half_span, double rise);
Profile parabola_profile(double half_span, double rise);
/// Through (height, half-width) pairs from (0, half_span) to (rise, 0), heights increasing,
/// half-widths not growing.
Profile drawn_profile(const std::vector<std::pair<double, double>>& points);

/// The profile that a validated spec asks for on a half-span. Precondition: the spec is sound and
/// its rise is not to be fitted any more: a rise, an arc radius or a ratio stands in it, unless the
/// curve is round, or drawn and as its points say.
Profile make_profile(const ProfileSpec& spec, double half_span);

/// x(y): half_span for y <= 0, 0 for y >= rise. Pointed a 1, rho 2, y 1 -> 0.732051.
double half_width(const Profile& profile, double height);
/// dx/dy, <= 0; 0 below the springline and above the crown, at either end that of the curve.
/// -infinity at the crown of a curve that ends level.
double slope(const Profile& profile, double height);
/// y(x), the inverse of x(y): the greatest y with x(y) >= x; x is taken into [0, half_span].
double height_at(const Profile& profile, double half_width);

/// Integrals between two heights, taken into [0, rise]; 0 where y1 <= y0. Closed forms, but for the
/// drawn profile, whose spans are summed by Gauss-Legendre quadrature (error under 1e-12 of the
/// whole).
/// area under both sides: integral of 2 x dy [m2];
double area_between(const Profile& profile, double y0, double y1);
/// length of one side of the curve [m];
double length_between(const Profile& profile, double y0, double y1);
/// volume enclosed when revolved about the pole: integral of pi x^2 dy [m3];
double volume_between(const Profile& profile, double y0, double y1);
/// surface of revolution about the pole: integral of 2 pi x ds [m2].
double surface_between(const Profile& profile, double y0, double y1);

/// Half-width of the face of plaster of thickness p >= 0 measured square to the profile: of the
/// points at least p from it and from the plumb wall below. Pointed and round:
/// sqrt((rho - p)^2 - y^2) - (rho - a); plumb half_span - p well below the springline (a curve that
/// meets the stem at an angle takes a little off in the last p below it). 0 where nothing is left.
double offset_half_width(const Profile& profile, double p, double height);
/// Greatest height above the springline (negative below it) at which that face still has this
/// half-width; -infinity where half_width > half_span - p: no stem is that wide.
double offset_height_at(const Profile& profile, double p, double half_width);

} // namespace coilwright
