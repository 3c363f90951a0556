#include "geometry/views/seen_edges.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace coilwright {

SightFrame sight_from(Bearing bearing) {
    return sight_from(bearing, 0);
}

SightFrame sight_from(Bearing bearing, double pitch) {
    const Vec2 level = along(bearing);
    const double c = std::cos(pitch * radians_per_degree), s = std::sin(pitch * radians_per_degree);
    SightFrame frame;
    frame.toward = Vec3(c * level.x(), c * level.y(), s);
    frame.right = Vec3(-level.y(), level.x(), 0);
    frame.up = frame.toward.cross(frame.right);
    return frame;
}

SightFrame sight_from_above() {
    return {};
}

SightBlock::SightBlock(const Mesh& mesh, const SightFrame& frame, double near) : near_(near) {
    std::vector<Vec3> points;
    points.reserve(mesh.vertices.size());
    for (const Vec3& vertex : mesh.vertices)
        points.push_back(frame.of(vertex));
    if (points.empty())
        return;
    Vec2 high = points.front().head<2>();
    low_ = high;
    for (const Vec3& point : points) {
        low_ = low_.cwiseMin(point.head<2>());
        high = high.cwiseMax(point.head<2>());
    }
    const Vec2 size = high - low_;
    // About one cell a facet, and no more cells than memory takes lightly.
    const double area = std::max(size.x() * size.y(), 1e-6);
    cell_ =
        std::sqrt(area / std::clamp(static_cast<double>(mesh.triangles.size()), 16.0, 250000.0));
    columns_ = static_cast<int>(size.x() / cell_) + 1;
    rows_ = static_cast<int>(size.y() / cell_) + 1;
    cells_.resize(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_));
    for (const auto& triangle : mesh.triangles) {
        const Facet facet{points[triangle[0]], points[triangle[1]], points[triangle[2]]};
        if (std::min({facet.a.z(), facet.b.z(), facet.c.z()}) >= near_)
            continue;
        const Vec2 from = facet.a.head<2>().cwiseMin(facet.b.head<2>()).cwiseMin(facet.c.head<2>());
        const Vec2 to = facet.a.head<2>().cwiseMax(facet.b.head<2>()).cwiseMax(facet.c.head<2>());
        const auto cell = [&](double value, double origin, int count) {
            return std::clamp(static_cast<int>((value - origin) / cell_), 0, count - 1);
        };
        const int index = static_cast<int>(facets_.size());
        facets_.push_back(facet);
        for (int row = cell(from.y(), low_.y(), rows_); row <= cell(to.y(), low_.y(), rows_); ++row)
            for (int column = cell(from.x(), low_.x(), columns_);
                 column <= cell(to.x(), low_.x(), columns_); ++column)
                cells_[static_cast<std::size_t>(row * columns_ + column)].push_back(index);
    }
}

bool SightBlock::hides(const Vec3& projected, double clearance) const {
    const int column = static_cast<int>(std::floor((projected.x() - low_.x()) / cell_));
    const int row = static_cast<int>(std::floor((projected.y() - low_.y()) / cell_));
    if (column < 0 || row < 0 || column >= columns_ || row >= rows_)
        return false;
    for (const int index : cells_[static_cast<std::size_t>(row * columns_ + column)]) {
        const Facet& f = facets_[static_cast<std::size_t>(index)];
        const auto twice = [](const Vec3& a, const Vec3& b, const Vec3& c) {
            return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
        };
        const double whole = twice(f.a, f.b, f.c);
        if (std::abs(whole) < 1e-14)
            continue; // seen edge-on
        const double u = twice(projected, f.b, f.c) / whole;
        const double v = twice(f.a, projected, f.c) / whole;
        const double w = 1 - u - v;
        if (u < 0 || v < 0 || w < 0)
            continue;
        const double depth = u * f.a.z() + v * f.b.z() + w * f.c.z();
        if (depth > projected.z() + clearance && depth < near_)
            return true;
    }
    return false;
}

} // namespace coilwright
