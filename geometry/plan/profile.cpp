#include "geometry/plan/profile.hpp"

#include "geometry/plan/drawn_curve.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();

// The root s of (cosh s - 1) / s = rise_to_half_span, s = half-span / c. The left side is convex
// and growing, so Newton's steps from above come down to the root without passing it; the bracket
// only guards the last digits.
double catenary_ratio(double rise_to_half_span) {
    const auto left_side = [](double s) { return 2 * std::sinh(s / 2) * std::sinh(s / 2) / s; };
    double low = 0;
    double high = std::min(2 * rise_to_half_span, 2 * std::log(2 * rise_to_half_span + 2) + 2);
    double s = high;
    for (int step = 0; step < 200; ++step) {
        const double excess = left_side(s) - rise_to_half_span;
        (excess > 0 ? high : low) = s;
        double next = s - excess * s / (std::sinh(s) - left_side(s));
        if (!(next > low && next < high))
            next = low + (high - low) / 2;
        if (next == s || next <= low || next >= high)
            break;
        s = next;
    }
    return s;
}

} // namespace

Profile pointed_profile(double half_span, double rise) {
    const double rho = (half_span * half_span + rise * rise) / (2 * half_span);
    return {ProfileKind::pointed, half_span, rise, rho, {}};
}

Profile round_profile(double half_span) {
    return {ProfileKind::round, half_span, half_span, half_span, {}};
}

Profile segmental_profile(double half_span, double rise) {
    const double radius = (half_span * half_span + rise * rise) / (2 * rise);
    return {ProfileKind::segmental, half_span, rise, radius, {}};
}

Profile catenary_profile(double half_span, double rise) {
    const double c = half_span / catenary_ratio(rise / half_span);
    return {ProfileKind::catenary, half_span, rise, c, {}};
}

Profile parabola_profile(double half_span, double rise) {
    return {ProfileKind::parabola, half_span, rise, 0, {}};
}

Profile drawn_profile(const std::vector<std::pair<double, double>>& points) {
    return {ProfileKind::drawn, points.front().second, points.back().first, 0,
            monotone_knots(points)};
}

Profile make_profile(const ProfileSpec& spec, double half_span) {
    double rise = 0;
    if (spec.rise)
        rise = *spec.rise;
    else if (spec.rise_to_span)
        rise = *spec.rise_to_span * 2 * half_span;
    else if (spec.arc_radius && spec.kind == ProfileKind::pointed)
        rise = std::sqrt(half_span * (2 * *spec.arc_radius - half_span));
    else if (spec.arc_radius)
        rise = half_span * half_span /
               (*spec.arc_radius +
                std::sqrt((*spec.arc_radius - half_span) * (*spec.arc_radius + half_span)));
    assert(rise > 0 || spec.kind == ProfileKind::round || spec.kind == ProfileKind::drawn);
    switch (spec.kind) {
    case ProfileKind::pointed:
        return pointed_profile(half_span, rise);
    case ProfileKind::round:
        return round_profile(half_span);
    case ProfileKind::segmental:
        return segmental_profile(half_span, rise);
    case ProfileKind::catenary:
        return catenary_profile(half_span, rise);
    case ProfileKind::parabola:
        return parabola_profile(half_span, rise);
    case ProfileKind::drawn:
        return drawn_profile(spec.points);
    }
    return {};
}

// Each formula is written so that it keeps its digits at the crown, where x goes to 0.
double half_width(const Profile& profile, double height) {
    const double a = profile.half_span, h = profile.rise, radius = profile.radius;
    if (height <= 0)
        return a;
    if (height >= h)
        return 0;
    const double below_crown = h - height;
    switch (profile.kind) {
    case ProfileKind::pointed:
        return below_crown * (h + height) /
               (std::sqrt((radius - height) * (radius + height)) + radius - a);
    case ProfileKind::round:
        return std::sqrt(below_crown * (a + height));
    case ProfileKind::segmental:
        return std::sqrt(below_crown * (2 * radius - below_crown));
    case ProfileKind::catenary:
        return 2 * radius * std::asinh(std::sqrt(below_crown / (2 * radius)));
    case ProfileKind::parabola:
        return a * std::sqrt(below_crown / h);
    case ProfileKind::drawn:
        return drawn_value(profile.knots, height);
    }
    return 0;
}

double slope(const Profile& profile, double height) {
    const double a = profile.half_span, h = profile.rise, radius = profile.radius;
    if (height < 0 || height > h)
        return 0;
    if (profile.kind == ProfileKind::drawn)
        return drawn_slope(profile.knots, height);
    if (profile.kind == ProfileKind::pointed)
        return height == 0 ? 0 : -height / (half_width(profile, height) + radius - a);
    const double x = half_width(profile, height);
    if (x == 0)
        return -infinity;
    switch (profile.kind) {
    case ProfileKind::round:
        return height == 0 ? 0 : -height / x;
    case ProfileKind::segmental:
        return -(height + radius - h) / x;
    case ProfileKind::catenary: {
        const double u = (h - height) / radius;
        return -1 / std::sqrt(u * (u + 2)); // sinh(acosh(1 + u))
    }
    case ProfileKind::parabola:
        return -a * a / (2 * h * x);
    default:
        return 0;
    }
}

double height_at(const Profile& profile, double half_width) {
    const double a = profile.half_span, h = profile.rise, radius = profile.radius;
    const double x = std::clamp(half_width, 0.0, a);
    switch (profile.kind) {
    case ProfileKind::pointed:
        return std::sqrt((a - x) * (2 * radius - a + x));
    case ProfileKind::round:
        return std::sqrt((a - x) * (a + x));
    case ProfileKind::segmental:
        return (a - x) * (a + x) / (std::sqrt((radius - x) * (radius + x)) + radius - h);
    case ProfileKind::catenary:
        return 2 * radius * std::sinh((a + x) / (2 * radius)) * std::sinh((a - x) / (2 * radius));
    case ProfileKind::parabola:
        return h * ((a - x) / a) * ((a + x) / a);
    case ProfileKind::drawn:
        return drawn_height_at(profile.knots, x);
    }
    return 0;
}

} // namespace coilwright
