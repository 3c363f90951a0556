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
/// its rise is not to be fitted any more.
Profile make_profile(const ProfileSpec& spec, double half_span);

/// x(y): half_span for y <= 0, 0 for y >= rise. Pointed a 1, rho 2, y 1 -> 0.732051.
double half_width(const Profile& profile, double height);
/// dx/dy, <= 0; 0 below the springline. -infinity at the crown of a curve that ends level.
double slope(const Profile& profile, double height);
/// y(x), the inverse of x(y), for 0 <= x <= half_span: the greatest y with x(y) >= x.
double height_at(const Profile& profile, double half_width);

/// Integrals between two heights y0 <= y1 within [0, rise] (closed form but for the arc length of
/// the catenary's revolution where none is known and the drawn profile, which use Gauss-Legendre
/// quadrature, error under 1e-9 relative):
/// area under both sides: integral of 2 x dy [m2];
double area_between(const Profile& profile, double y0, double y1);
/// length of one side of the curve [m];
double length_between(const Profile& profile, double y0, double y1);
/// volume enclosed when revolved about the pole: integral of pi x^2 dy [m3];
double volume_between(const Profile& profile, double y0, double y1);
/// surface of revolution about the pole: integral of 2 pi x ds [m2].
double surface_between(const Profile& profile, double y0, double y1);

/// The profile offset inward along its normal by p (the face of the plaster): half-width at a
/// height, trimmed where offset branches cross. Pointed: sqrt((rho - p)^2 - y^2) - (rho - a).
/// Below the springline half_span - p. 0 where nothing is left.
double offset_half_width(const Profile& profile, double p, double height);
/// Greatest height above the springline at which the offset profile is at least that half-width;
/// -infinity where half_width > half_span - p (no stem is that wide).
double offset_height_at(const Profile& profile, double p, double half_width);

} // namespace coilwright
