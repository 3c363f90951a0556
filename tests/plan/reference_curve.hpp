// Profiles drawn a second time, from their textbook parametric forms in long double, and integrated
// by Simpson's rule: what the closed forms are held against.
#pragma once

#include "geometry/plan/profile.hpp"
#include "tests/support/seeded.hpp"

#include <cmath>
#include <functional>

namespace coilwright {

struct ReferenceCurve {
    using Function = std::function<long double(long double)>;
    Function x, y, dx, dy; // along a parameter s that grows with height
    Function s_at_height;

    long double simpson(const Function& f, double y0, double y1, int panels = 2000) const {
        const long double from = s_at_height(y0), to = s_at_height(y1);
        const long double step = (to - from) / panels;
        long double sum = 0;
        for (int i = 0; i < panels; ++i) {
            const long double s = from + i * step;
            sum += f(s) + 4 * f(s + step / 2) + f(s + step);
        }
        return sum * step / 6;
    }
    long double speed(long double s) const { return std::hypot(dx(s), dy(s)); }

    long double area(double y0, double y1) const {
        return simpson([this](long double s) { return 2 * x(s) * dy(s); }, y0, y1);
    }
    long double length(double y0, double y1) const {
        return simpson([this](long double s) { return speed(s); }, y0, y1);
    }
    long double volume(double y0, double y1) const {
        return simpson([this](long double s) { return pi * x(s) * x(s) * dy(s); }, y0, y1);
    }
    long double surface(double y0, double y1) const {
        return simpson([this](long double s) { return 2 * pi * x(s) * speed(s); }, y0, y1);
    }
};

// A circle of radius r about (centre_x, centre_y), by the angle above the horizontal.
inline ReferenceCurve reference_arc(long double r, long double centre_x, long double centre_y) {
    return {[=](long double s) { return centre_x + r * std::cos(s); },
            [=](long double s) { return centre_y + r * std::sin(s); },
            [=](long double s) { return -r * std::sin(s); },
            [=](long double s) { return r * std::cos(s); },
            [=](long double y) { return std::asin(std::min(1.0L, (y - centre_y) / r)); }};
}

// By -x, so that the parameter grows with height.
inline ReferenceCurve reference_catenary(long double a, long double h) {
    long double low = 1e-9L * a, high = 1e9L * a; // of c: a flatter curve has a larger c
    for (int i = 0; i < 400; ++i) {
        const long double c = std::sqrt(low * high);
        (c * (std::cosh(a / c) - 1) > h ? low : high) = c;
    }
    const long double c = low;
    return {[](long double s) { return -s; },
            [=](long double s) { return h - c * (std::cosh(s / c) - 1); },
            [](long double) { return -1; }, [=](long double s) { return -std::sinh(s / c); },
            [=](long double y) { return -c * std::acosh(1 + (h - y) / c); }};
}

inline ReferenceCurve reference_parabola(long double a, long double h) {
    return {[](long double s) { return -s; },
            [=](long double s) { return h * (1 - s * s / (a * a)); },
            [](long double) { return -1; }, [=](long double s) { return -2 * h * s / (a * a); },
            [=](long double y) { return -a * std::sqrt(1 - y / h); }};
}

inline ReferenceCurve reference_curve(ProfileKind kind, double a, double h) {
    const long double span = a, rise = h;
    switch (kind) {
    case ProfileKind::pointed: {
        const long double rho = (span * span + rise * rise) / (2 * span);
        return reference_arc(rho, span - rho, 0);
    }
    case ProfileKind::round:
        return reference_arc(span, 0, 0);
    case ProfileKind::segmental: {
        const long double r = (span * span + rise * rise) / (2 * rise);
        return reference_arc(r, 0, rise - r);
    }
    case ProfileKind::catenary:
        return reference_catenary(span, rise);
    default:
        return reference_parabola(span, rise);
    }
}

/// A profile of any kind but drawn, with half-span 0.3 to 5 m and rise over half-span from 0.05 (or
/// what the kind allows) to 20.
inline Profile random_profile(Seeded& seeded) {
    const double a = seeded.between(0.3, 5);
    const double steep = std::exp(seeded.between(std::log(0.05), std::log(20.0)));
    switch (seeded.whole(0, 4)) {
    case 0:
        return pointed_profile(a, a * std::max(1.0, steep));
    case 1:
        return round_profile(a);
    case 2:
        return segmental_profile(a, a * std::min(1.0, steep));
    case 3:
        return catenary_profile(a, a * steep);
    default:
        return parabola_profile(a, a * steep);
    }
}

/// A drawn profile of 2 to 9 points, plumb in places.
inline Profile random_drawn(Seeded& seeded) {
    const int spans = seeded.whole(1, 8);
    std::vector<std::pair<double, double>> points{{0, 0}};
    std::vector<double> steps;
    double total = 0;
    for (int i = 0; i < spans; ++i) {
        points.push_back({points.back().first + seeded.between(0.05, 1), 0});
        steps.push_back(i + 1 < spans && seeded.whole(0, 3) == 0 ? 0 : seeded.between(0.02, 1));
        total += steps.back();
    }
    double half_width = seeded.between(0.5, 4);
    const double scale = half_width / total;
    for (int i = 0; i < spans; ++i) {
        points[i].second = half_width;
        half_width -= steps[i] * scale;
    }
    points.back().second = 0;
    return drawn_profile(points);
}

} // namespace coilwright
