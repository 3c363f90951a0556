// Points along curves: chords within tolerance and spacing, and no more of them than that takes.
#include "geometry/base/bearing.hpp"
#include "geometry/solids/curve_sampling.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

using namespace coilwright;

namespace {

const auto freely = [](double) { return std::numeric_limits<double>::infinity(); };

double greatest_sag(const CurveStretch& curve, const std::vector<double>& parameters) {
    double most = 0;
    for (std::size_t i = 1; i < parameters.size(); ++i) {
        const Vec3 a = curve.at(parameters[i - 1]), b = curve.at(parameters[i]);
        for (int k = 1; k < 16; ++k) {
            const Vec3 at =
                curve.at(parameters[i - 1] + (parameters[i] - parameters[i - 1]) * k / 16);
            const double share = std::clamp((at - a).dot(b - a) / (b - a).squaredNorm(), 0.0, 1.0);
            most = std::max(most, (at - a - share * (b - a)).norm());
        }
    }
    return most;
}

} // namespace

TEST_CASE("a half circle takes the chords its sagitta asks for") {
    const CurveStretch half{[](double t) { return Vec3(std::cos(t), std::sin(t), 0); }, freely, 0,
                            pi};
    const auto parameters = spaced_parameters(half, 0.002);
    // Sagitta 1 - cos(step / 2) = 0.002: a step of 0.1265, 24.8 of them.
    CHECK(parameters.size() >= 26);
    CHECK(parameters.size() <= 28);
    CHECK(parameters.front() == 0);
    CHECK(parameters.back() == pi);
    CHECK(std::is_sorted(parameters.begin(), parameters.end()));
    CHECK(greatest_sag(half, parameters) <= 0.002);
}

TEST_CASE("a straight stretch is divided by the spacing alone") {
    const CurveStretch line{[](double t) { return Vec3(3 * t, 4 * t, 0); },
                            [](double) { return 0.5; }, 0, 1};
    CHECK(spaced_parameters(line, 0.002).size() == 11);
    const CurveStretch free{line.at, freely, 0, 1};
    CHECK(spaced_parameters(free, 0.002).size() == 2);
}

TEST_CASE("tight bends and uneven parameters keep the tolerance with neighbours of like length") {
    // An ellipse of 2 by 0.2 by its angle, and a corner rounded over a millimetre or two.
    const CurveStretch ellipse{[](double t) { return Vec3(2 * std::cos(t), 0.2 * std::sin(t), 0); },
                               freely, 0, pi};
    const CurveStretch corner{[](double t) { return Vec3(t, std::sqrt(t * t + 1e-6), 0); }, freely,
                              -1, 1};
    for (const CurveStretch& curve : {ellipse, corner})
        for (const double tolerance : {0.01, 0.002, 0.0005}) {
            const auto parameters = spaced_parameters(curve, tolerance);
            CHECK(greatest_sag(curve, parameters) <= tolerance * 1.001);
            for (std::size_t i = 2; i < parameters.size(); ++i) {
                const double a = (curve.at(parameters[i - 1]) - curve.at(parameters[i - 2])).norm();
                const double b = (curve.at(parameters[i]) - curve.at(parameters[i - 1])).norm();
                CHECK(std::max(a, b) < 2.5 * std::min(a, b));
            }
        }
}
