#include "geometry/solids/curve_sampling.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

constexpr double growth = 0.4; // of the spacing, per metre along the curve

struct Trace {
    std::vector<double> parameter, length, step;
    std::vector<Vec3> point;
};

Trace trace(const CurveStretch& curve, int cells) {
    Trace trace;
    for (int i = 0; i <= cells; ++i) {
        const double t = curve.start + (curve.end - curve.start) * i / cells;
        trace.parameter.push_back(t);
        trace.point.push_back(curve.at(t));
        trace.length.push_back(
            i == 0 ? 0 : trace.length.back() + (trace.point[i] - trace.point[i - 1]).norm());
    }
    return trace;
}

double curvature(const Vec3& a, const Vec3& b, const Vec3& c) {
    const Vec3 u = b - a, v = c - b;
    const double lengths = u.norm() * v.norm() * (c - a).norm();
    return lengths > 0 ? 2 * u.cross(v).norm() / lengths : 0;
}

void set_steps(Trace& trace, const CurveStretch& curve, double tolerance) {
    const int count = static_cast<int>(trace.point.size());
    trace.step.resize(count);
    for (int i = 0; i < count; ++i) {
        const int middle = std::clamp(i, 1, count - 2);
        const double bend =
            curvature(trace.point[middle - 1], trace.point[middle], trace.point[middle + 1]);
        const double by_bend =
            bend > 0 ? std::sqrt(8 * tolerance / bend) : std::numeric_limits<double>::infinity();
        trace.step[i] = std::min({by_bend, curve.spacing(trace.parameter[i]), trace.length.back()});
    }
    const auto limit = [&](int i, int by) {
        const double apart = std::abs(trace.length[i] - trace.length[by]);
        trace.step[i] = std::min(trace.step[i], trace.step[by] + growth * apart);
    };
    for (int i = 1; i < count; ++i)
        limit(i, i - 1);
    for (int i = count - 1; i-- > 0;)
        limit(i, i + 1);
}

std::vector<double> divided(const Trace& trace, const std::vector<double>& steps, int count) {
    std::vector<double> parameters{trace.parameter.front()};
    for (int j = 1; j < count; ++j) {
        const double wanted = steps.back() * j / count;
        const std::size_t i =
            std::lower_bound(steps.begin() + 1, steps.end() - 1, wanted) - steps.begin();
        const double share = (wanted - steps[i - 1]) / (steps[i] - steps[i - 1]);
        parameters.push_back(trace.parameter[i - 1] +
                             share * (trace.parameter[i] - trace.parameter[i - 1]));
    }
    parameters.push_back(trace.parameter.back());
    return parameters;
}

/// Greatest distance of the curve's points between two parameters from their chord.
double sag(const CurveStretch& curve, double from, double to) {
    const Vec3 start = curve.at(from), chord = (curve.at(to) - start).normalized();
    double most = 0;
    for (const double share : {0.1, 0.3, 0.5, 0.7, 0.9})
        most = std::max(most, chord.cross(curve.at(from + share * (to - from)) - start).norm());
    return most;
}

} // namespace

std::vector<double> spaced_parameters(const CurveStretch& curve, double tolerance) {
    Trace line = trace(curve, 96);
    set_steps(line, curve, 0.95 * tolerance);
    std::vector<double> steps{0};
    for (std::size_t i = 1; i < line.step.size(); ++i)
        steps.push_back(steps.back() + (line.length[i] - line.length[i - 1]) * 2 /
                                           (line.step[i] + line.step[i - 1]));
    int count = std::max(1, static_cast<int>(std::ceil(steps.back() - 1e-6)));
    std::vector<double> parameters = divided(line, steps, count);
    const auto too_coarse = [&] {
        for (std::size_t i = 1; i < parameters.size(); ++i)
            if (sag(curve, parameters[i - 1], parameters[i]) > tolerance)
                return true;
        return false;
    };
    for (int trial = 0; trial < 20 && too_coarse(); ++trial) {
        count += 1 + count / 4;
        parameters = divided(line, steps, count);
    }
    return parameters;
}

} // namespace coilwright
