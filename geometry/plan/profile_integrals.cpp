// Area, length, volume and surface of a profile between two heights.
//
// Circular arcs (pointed, round, segmental) are reckoned as a chord plus a circular segment, and
// the other closed forms as products of differences, so that a thin slice near the crown keeps its
// digits.
#include "geometry/plan/drawn_curve.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace coilwright {

namespace {

struct Slice {
    double x0, y0, x1, y1; // lower and upper end of the curve's piece
    double height() const { return y1 - y0; }
};

Slice slice_of(const Profile& profile, double y0, double y1) {
    const double low = std::clamp(y0, 0.0, profile.rise);
    const double high = std::clamp(y1, low, profile.rise);
    return {half_width(profile, low), low, half_width(profile, high), high};
}

// The sum of `first` and 29 more terms, by the series of an odd or even function; `ratio` gives the
// quotient of term k to term k - 1 without its x^2.
template <typename Ratio>
double series(double first, double x, Ratio ratio) {
    double term = first, sum = first;
    for (int k = 1; k < 30; ++k) {
        term *= ratio(k) * x * x;
        sum += term;
        if (std::abs(term) < 1e-18 * std::abs(sum))
            break;
    }
    return sum;
}

// angle - sin(angle), without cancellation for small angles.
double angle_less_sine(double angle) {
    if (angle > 1)
        return angle - std::sin(angle);
    return series(angle * angle * angle / 6, angle,
                  [](int k) { return -1.0 / ((2 * k + 2) * (2 * k + 3)); });
}

// A piece of a circle between two points.
struct Arc {
    double radius, half_angle, chord;
    double cos_middle; // of the angle of the arc's middle above the horizontal
    Arc(const Slice& slice, double r) : radius(r) {
        chord = std::hypot(slice.x0 - slice.x1, slice.height());
        half_angle = std::asin(std::min(1.0, chord / (2 * radius)));
        cos_middle = chord > 0 ? slice.height() / chord : 0;
    }
    double segment_area() const { return radius * radius / 2 * angle_less_sine(2 * half_angle); }
    double sagitta() const {
        return 2 * radius * std::sin(half_angle / 2) * std::sin(half_angle / 2);
    }
    // First moment of the segment's area about its chord.
    double segment_moment() const {
        const double sine = std::sin(half_angle);
        return radius * radius * radius *
               (2 * sine * sine * sine / 3 -
                std::cos(half_angle) * angle_less_sine(2 * half_angle) / 2);
    }
};

bool is_arc(ProfileKind kind) {
    return kind == ProfileKind::pointed || kind == ProfileKind::round ||
           kind == ProfileKind::segmental;
}

// Primitives from 0 of s sinh s, s^2 sinh s and s cosh s.
double integral_s_sinh(double s) {
    if (s > 1)
        return s * std::cosh(s) - std::sinh(s);
    return series(s * s * s / 3, s,
                  [](int k) { return (2.0 * k + 1) / ((2.0 * k) * (2 * k + 1) * (2 * k + 3)); });
}
double integral_s2_sinh(double s) {
    if (s > 1) {
        const double half = std::sinh(s / 2);
        return s * (s * std::cosh(s) - 2 * std::sinh(s)) + 4 * half * half;
    }
    return series(s * s * s * s / 4, s,
                  [](int k) { return (2.0 * k + 2) / ((2.0 * k) * (2 * k + 1) * (2 * k + 4)); });
}
double integral_s_cosh(double s) {
    if (s > 1) {
        const double half = std::sinh(s / 2);
        return s * std::sinh(s) - 2 * half * half;
    }
    return series(s * s / 2, s,
                  [](int k) { return (2.0 * k) / ((2.0 * k - 1) * (2 * k) * (2 * k + 2)); });
}

// Nodes and weights on [-1, 1] of the Gauss-Legendre rule, by Newton on the Legendre polynomial.
constexpr int rule_size = 16;
struct GaussRule {
    std::array<double, rule_size> node{}, weight{};
    GaussRule() {
        for (int i = 0; i < rule_size; ++i) {
            double x = std::cos(pi * (i + 0.75) / (rule_size + 0.5)), derivative = 1;
            for (int step = 0; step < 20; ++step) {
                double before = 1, value = x;
                for (int n = 2; n <= rule_size; ++n) {
                    const double next = ((2 * n - 1) * x * value - (n - 1) * before) / n;
                    before = value;
                    value = next;
                }
                derivative = rule_size * (x * value - before) / (x * x - 1);
                const double change = value / derivative;
                x -= change;
                if (std::abs(change) < 1e-16)
                    break;
            }
            node[i] = x;
            weight[i] = 2 / ((1 - x * x) * derivative * derivative);
        }
    }
};

template <typename Function>
double gauss(const Function& f, double from, double to) {
    static const GaussRule rule;
    const double middle = (from + to) / 2, half = (to - from) / 2;
    double sum = 0;
    for (int i = 0; i < rule_size; ++i)
        sum += rule.weight[i] * f(middle + half * rule.node[i]);
    return half * sum;
}

// Halves an interval until the rule on it and on its halves agree: a root of 1 + slope^2 may come
// near the interval where a drawn curve turns sharply.
template <typename Function>
double gauss_halving(const Function& f, double from, double to, double whole, int depth) {
    const double middle = (from + to) / 2;
    const double lower = gauss(f, from, middle), upper = gauss(f, middle, to);
    if (depth == 0 || std::abs(lower + upper - whole) <= 1e-13 * std::abs(lower + upper))
        return lower + upper;
    return gauss_halving(f, from, middle, lower, depth - 1) +
           gauss_halving(f, middle, to, upper, depth - 1);
}

// Sums an integrand of (half-width, slope) over the spans of a drawn profile.
template <typename Integrand>
double over_spans(const Profile& profile, double y0, double y1, const Integrand& integrand) {
    double sum = 0;
    for (std::size_t i = 0; i + 1 < profile.knots.size(); ++i) {
        const double from = std::max(y0, profile.knots[i].height);
        const double to = std::min(y1, profile.knots[i + 1].height);
        if (from >= to)
            continue;
        const CubicSpan span = span_above(profile.knots, i);
        const auto f = [&](double y) { return integrand(span.value(y), span.slope(y)); };
        sum += gauss_halving(f, from, to, gauss(f, from, to), 20);
    }
    return sum;
}

// What the closed forms of the parabola share: sqrt(1 + (dy/dx)^2) at both ends, and x0^2 - x1^2.
struct ParabolaPiece {
    double k, q0, q1, square_difference;
    ParabolaPiece(const Profile& profile, const Slice& slice)
        : k(profile.half_span * profile.half_span / (2 * profile.rise)),
          q0(std::hypot(1, slice.x0 / k)), q1(std::hypot(1, slice.x1 / k)),
          square_difference(2 * k * slice.height()) {}
};

} // namespace

double area_between(const Profile& profile, double y0, double y1) {
    const Slice s = slice_of(profile, y0, y1);
    if (s.height() <= 0)
        return 0;
    if (is_arc(profile.kind))
        return (s.x0 + s.x1) * s.height() + 2 * Arc(s, profile.radius).segment_area();
    if (profile.kind == ProfileKind::parabola)
        return 4 * s.height() * (s.x0 * s.x0 + s.x0 * s.x1 + s.x1 * s.x1) / (3 * (s.x0 + s.x1));
    if (profile.kind == ProfileKind::catenary) {
        const double c = profile.radius;
        return 2 * c * c * (integral_s_sinh(s.x0 / c) - integral_s_sinh(s.x1 / c));
    }
    return over_spans(profile, s.y0, s.y1, [](double x, double) { return 2 * x; });
}

double length_between(const Profile& profile, double y0, double y1) {
    const Slice s = slice_of(profile, y0, y1);
    if (s.height() <= 0)
        return 0;
    if (is_arc(profile.kind))
        return 2 * profile.radius * Arc(s, profile.radius).half_angle;
    if (profile.kind == ProfileKind::parabola) {
        const ParabolaPiece p(profile, s);
        const double products = p.square_difference *
                                (1 + (s.x0 * s.x0 + s.x1 * s.x1) / (p.k * p.k)) /
                                (s.x0 * p.q0 + s.x1 * p.q1);
        const double logarithm =
            std::asinh(p.square_difference / (p.k * (s.x0 * p.q1 + s.x1 * p.q0)));
        return (products + p.k * logarithm) / 2;
    }
    if (profile.kind == ProfileKind::catenary) {
        const double c = profile.radius;
        return 2 * c * std::cosh((s.x0 + s.x1) / (2 * c)) * std::sinh((s.x0 - s.x1) / (2 * c));
    }
    return over_spans(profile, s.y0, s.y1,
                      [](double, double slope) { return std::hypot(1, slope); });
}

double volume_between(const Profile& profile, double y0, double y1) {
    const Slice s = slice_of(profile, y0, y1);
    if (s.height() <= 0)
        return 0;
    if (is_arc(profile.kind)) { // frustum, and the segment turned about the pole (Pappus)
        const Arc arc(s, profile.radius);
        return pi * s.height() * (s.x0 * s.x0 + s.x0 * s.x1 + s.x1 * s.x1) / 3 +
               2 * pi *
                   ((s.x0 + s.x1) / 2 * arc.segment_area() + arc.cos_middle * arc.segment_moment());
    }
    if (profile.kind == ProfileKind::parabola)
        return pi * s.height() * (s.x0 * s.x0 + s.x1 * s.x1) / 2;
    if (profile.kind == ProfileKind::catenary) {
        const double c = profile.radius;
        return pi * c * c * c * (integral_s2_sinh(s.x0 / c) - integral_s2_sinh(s.x1 / c));
    }
    return over_spans(profile, s.y0, s.y1, [](double x, double) { return pi * x * x; });
}

double surface_between(const Profile& profile, double y0, double y1) {
    const Slice s = slice_of(profile, y0, y1);
    if (s.height() <= 0)
        return 0;
    if (is_arc(profile.kind)) {
        const Arc arc(s, profile.radius);
        const double middle = (s.x0 + s.x1) / 2 + arc.sagitta() * arc.cos_middle;
        return 4 * pi * profile.radius *
               (middle * arc.half_angle -
                profile.radius * arc.cos_middle * angle_less_sine(arc.half_angle));
    }
    if (profile.kind == ProfileKind::parabola) {
        const ParabolaPiece p(profile, s);
        return 2 * pi / 3 * p.square_difference * (p.q0 * p.q0 + p.q0 * p.q1 + p.q1 * p.q1) /
               (p.q0 + p.q1);
    }
    if (profile.kind == ProfileKind::catenary) {
        const double c = profile.radius;
        return 2 * pi * c * c * (integral_s_cosh(s.x0 / c) - integral_s_cosh(s.x1 / c));
    }
    return over_spans(profile, s.y0, s.y1,
                      [](double x, double slope) { return 2 * pi * x * std::hypot(1, slope); });
}

} // namespace coilwright
