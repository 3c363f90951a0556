#include "geometry/solids/ruled_surface.hpp"

#include <cmath>
#include <limits>

namespace coilwright {

RuledSurface::RuledSurface(Section section, double tolerance, const Vec2& origin,
                           const Vec2& outward)
    : section_(std::move(section)), origin_(origin), outward_(outward),
      along_(-outward.y(), outward.x()),
      trace_(section_, tolerance, [tolerance](double bend, double, double) {
          return edge_for_tolerance(bend, 0, tolerance);
      }) {}

Vec2 RuledSurface::flatten(const Vec3& point) const {
    return {along_.dot(point.head<2>() - origin_), trace_.arc_at(point.z())};
}

Vec3 RuledSurface::point(const Vec2& flat) const {
    const double z = trace_.height_at_arc(flat.y());
    const Vec2 in_plan = origin_ + section_.offset(z) * outward_ + flat.x() * along_;
    return {in_plan.x(), in_plan.y(), z};
}

double RuledSurface::spacing(const Vec2& flat) const {
    return trace_.spacing_at(trace_.height_at_arc(flat.y()));
}

double RuledSurface::deviation(const Vec3& point) const {
    return trace_.distance(outward_.dot(point.head<2>() - origin_), point.z());
}

Vec2 RuledSurface::drawn_to_bend(const Vec2& flat, double reach) const {
    if (trace_.kinks().empty())
        return flat;
    const double* kink = trace_.kink_near(trace_.height_at_arc(flat.y()), reach);
    return kink ? Vec2(flat.x(), trace_.arc_at(*kink)) : flat;
}

double RuledSurface::bend_between(const Vec3& from, const Vec3& to) const {
    return trace_.kink_between(from.z(), to.z());
}

std::vector<Vec2> RuledSurface::pattern(const Vec2& low, const Vec2& high) const {
    std::vector<Vec2> points;
    int row = 0;
    for (const double z : trace_.rows()) {
        const double spacing = trace_.spacing_at(z), arc = trace_.arc_at(z);
        ++row;
        if (!std::isfinite(spacing) || arc <= low.y() || arc >= high.y())
            continue;
        const double width = high.x() - low.x();
        const int columns = static_cast<int>(std::ceil(width / spacing));
        for (int i = 0; i <= columns; ++i)
            points.emplace_back(low.x() + width * (i + row % 2 / 2.0) / columns, arc);
    }
    return points;
}

} // namespace coilwright
