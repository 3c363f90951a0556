#include "geometry/plan/drawn_curve.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

// Slope at the end of a table by the parabola through its last three points, not let to turn round.
double end_slope(double near_height, double far_height, double near_secant, double far_secant) {
    const double slope = ((2 * near_height + far_height) * near_secant - near_height * far_secant) /
                         (near_height + far_height);
    return std::min(slope, 0.0);
}

std::size_t span_index(const std::vector<Profile::Knot>& knots, double height) {
    const auto above = std::upper_bound(
        knots.begin(), knots.end(), height,
        [](double value, const Profile::Knot& knot) { return value < knot.height; });
    const auto index = above == knots.begin() ? 0 : above - knots.begin() - 1;
    return std::min<std::size_t>(index, knots.size() - 2);
}

} // namespace

std::vector<Profile::Knot> monotone_knots(const std::vector<std::pair<double, double>>& points) {
    const std::size_t spans = points.size() - 1;
    std::vector<double> heights(spans), secants(spans);
    for (std::size_t i = 0; i < spans; ++i) {
        heights[i] = points[i + 1].first - points[i].first;
        secants[i] = (points[i + 1].second - points[i].second) / heights[i];
    }
    std::vector<Profile::Knot> knots;
    knots.reserve(points.size());
    for (const auto& [height, half_width] : points)
        knots.push_back({height, half_width, secants.front()});
    if (spans > 1) {
        knots.front().slope = end_slope(heights[0], heights[1], secants[0], secants[1]);
        knots.back().slope = end_slope(heights[spans - 1], heights[spans - 2], secants[spans - 1],
                                       secants[spans - 2]);
        for (std::size_t i = 1; i < spans; ++i)
            knots[i].slope = (heights[i] * secants[i - 1] + heights[i - 1] * secants[i]) /
                             (heights[i - 1] + heights[i]);
    }
    for (std::size_t i = 0; i < spans; ++i) {
        double& lower = knots[i].slope;
        double& upper = knots[i + 1].slope;
        const double steepest = std::hypot(lower, upper);
        if (secants[i] == 0)
            lower = upper = 0;
        else if (steepest > -3 * secants[i]) {
            const double scale = -3 * secants[i] / steepest;
            lower *= scale;
            upper *= scale;
        }
    }
    return knots;
}

double CubicSpan::value(double y) const {
    const double t = (y - y0) / height;
    return x0 + t * (c1 + t * (c2 + t * c3));
}

double CubicSpan::slope(double y) const {
    const double t = (y - y0) / height;
    return (c1 + t * (2 * c2 + t * 3 * c3)) / height;
}

CubicSpan span_above(const std::vector<Profile::Knot>& knots, std::size_t knot) {
    const Profile::Knot& low = knots[knot];
    const Profile::Knot& high = knots[knot + 1];
    const double height = high.height - low.height;
    const double m0 = low.slope * height, m1 = high.slope * height;
    const double step = high.half_width - low.half_width;
    return {low.height, height, low.half_width, m0, 3 * step - 2 * m0 - m1, m0 + m1 - 2 * step};
}

double drawn_value(const std::vector<Profile::Knot>& knots, double height) {
    const std::size_t i = span_index(knots, height);
    // Rounding must not carry the curve past its knots.
    return std::clamp(span_above(knots, i).value(height), knots[i + 1].half_width,
                      knots[i].half_width);
}

double drawn_slope(const std::vector<Profile::Knot>& knots, double height) {
    return std::min(span_above(knots, span_index(knots, height)).slope(height), 0.0);
}

double drawn_height_at(const std::vector<Profile::Knot>& knots, double half_width) {
    std::size_t i = knots.size() - 1;
    while (i > 0 && knots[i].half_width < half_width)
        --i;
    if (i == knots.size() - 1 || knots[i].half_width == half_width)
        return knots[i].height;
    const CubicSpan span = span_above(knots, i);
    double wide = knots[i].height, narrow = knots[i + 1].height;
    for (int step = 0; step < 100; ++step) {
        const double middle = wide + (narrow - wide) / 2;
        if (middle <= wide || middle >= narrow)
            break;
        (span.value(middle) >= half_width ? wide : narrow) = middle;
    }
    return wide;
}

} // namespace coilwright
