// Triangles turned into samples. Included by the sources of shaded_picture.hpp.
#pragma once

#include "geometry/base/vec.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace coilwright {

/// Calls `sample(column, row, depth, u, v)` for every sample whose middle (column + 1/2, row + 1/2)
/// lies in the triangle, rows from `first` up to `end`, columns below `width`. Corners: x, y in
/// samples, z the depth; the depth is c0 + u (c1 - c0) + v (c2 - c0), and so is all else.
template <typename Sample>
void scan(const std::array<Vec3, 3>& corners, int width, int first, int end, Sample sample) {
    const Vec3 &a = corners[0], e1 = corners[1] - a, e2 = corners[2] - a;
    const double twice = e1.x() * e2.y() - e1.y() * e2.x();
    if (std::abs(twice) < 1e-9)
        return;
    const auto [low_y, high_y] = std::minmax({corners[0].y(), corners[1].y(), corners[2].y()});
    const auto [low_x, high_x] = std::minmax({corners[0].x(), corners[1].x(), corners[2].x()});
    const int top = std::max(first, static_cast<int>(std::ceil(low_y - 0.5)));
    const int bottom = std::min(end - 1, static_cast<int>(std::floor(high_y - 0.5)));
    const int left = std::max(0, static_cast<int>(std::ceil(low_x - 0.5)));
    const int right = std::min(width - 1, static_cast<int>(std::floor(high_x - 0.5)));
    const double du = e2.y() / twice, dv = -e1.y() / twice; // a step to the right
    for (int row = top; row <= bottom; ++row) {
        const double x = left + 0.5 - a.x(), y = row + 0.5 - a.y();
        const double u0 = (x * e2.y() - y * e2.x()) / twice;
        const double v0 = (e1.x() * y - e1.y() * x) / twice;
        // The stretch of the row between the sides, a sample longer at each end: long thin
        // triangles fill little of their box.
        double from = 0, to = right - left;
        const auto bound = [&](double value, double step) { // value + k step >= 0
            if (step > 0)
                from = std::max(from, -value / step);
            else if (step < 0)
                to = std::min(to, -value / step);
        };
        bound(u0, du);
        bound(v0, dv);
        bound(1 - u0 - v0, -du - dv);
        if (!(from <= to + 2))
            continue;
        const int last = std::min(right - left, static_cast<int>(std::ceil(to)) + 1);
        for (int k = std::max(0, static_cast<int>(std::floor(from)) - 1); k <= last; ++k) {
            const double u = u0 + k * du, v = v0 + k * dv;
            if (u >= -1e-9 && v >= -1e-9 && u + v <= 1 + 1e-9)
                sample(left + k, row, a.z() + u * e1.z() + v * e2.z(), u, v);
        }
    }
}

} // namespace coilwright
