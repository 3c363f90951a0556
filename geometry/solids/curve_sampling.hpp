// Where to put points on a curve in space so that chords keep a tolerance and a spacing.
#pragma once

#include "geometry/base/vec.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// A stretch of a curve by a parameter, and the longest chord wanted at each place.
struct CurveStretch {
    std::function<Vec3(double)> at;
    std::function<double(double)> spacing; // metres; may be infinite
    double start = 0, end = 1;
};

/// Parameters from start to end, both included, in order: chords lie within the tolerance of the
/// curve and are about as long as that and the spacing allow, neighbours of like length.
/// A half circle of radius 1 at tolerance 0.002, free spacing: 26 chords.
std::vector<double> spaced_parameters(const CurveStretch& curve, double tolerance);

} // namespace coilwright
