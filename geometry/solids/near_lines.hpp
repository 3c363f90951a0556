// Where lines on one face run close beside each other.
#pragma once

#include "geometry/base/vec.hpp"

#include <utility>
#include <vector>

namespace coilwright {

/// A curve as a few points on it; ends with the same number are one place (-1: none).
struct RoughLine {
    std::vector<Vec3> points;
    int from = -1, to = -1;
};

/// A place on a line, and how far the nearest of the others is.
struct NearPlace {
    std::size_t line = 0;
    Vec3 at{0, 0, 0};
    double distance = 0;
};

/// The points of the lines that have another one within reach (metres). Lines that start from one
/// place count only where they open by less than 20 degrees.
std::vector<NearPlace> near_places(const std::vector<const RoughLine*>& lines, double reach);

} // namespace coilwright
