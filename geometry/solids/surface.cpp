#include "geometry/solids/surface.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

double edge_for_tolerance(double k1, double k2, double tolerance) {
    const double most =
        std::max(std::max(std::abs(k1), std::abs(k2)) / 8, (std::abs(k1) + std::abs(k2)) / 12);
    return most > 0 ? std::sqrt(tolerance / most) : std::numeric_limits<double>::infinity();
}

double LevelSurface::spacing(const Vec2&) const {
    return std::numeric_limits<double>::infinity();
}

} // namespace coilwright
