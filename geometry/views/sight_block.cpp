#include "geometry/views/sight_block.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numeric>

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

/// Calls `visit(cell)` for each cell that the facet's box reaches.
template <typename Visit>
void SightBlock::visit_cells(const Facet& facet, const Visit& visit) const {
    const Vec2 from = facet.a.head<2>().cwiseMin(facet.b.head<2>()).cwiseMin(facet.c.head<2>());
    const Vec2 to = facet.a.head<2>().cwiseMax(facet.b.head<2>()).cwiseMax(facet.c.head<2>());
    const auto cell = [&](double value, double origin, int count) {
        return std::clamp(static_cast<int>((value - origin) / cell_), 0, count - 1);
    };
    const int left = cell(from.x(), low_.x(), columns_), right = cell(to.x(), low_.x(), columns_);
    const int bottom = cell(from.y(), low_.y(), rows_), top = cell(to.y(), low_.y(), rows_);
    for (int row = bottom; row <= top; ++row)
        for (int column = left; column <= right; ++column)
            visit(static_cast<std::size_t>(row * columns_ + column));
}

SightBlock::SightBlock(const Mesh& mesh, const SightFrame& frame, double near)
    : frame_(frame), near_(near) {
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
    // Where nothing is taken away, a facet that faces away has another of its body before it.
    const bool whole = std::isinf(near);
    for (const auto& triangle : mesh.triangles) {
        const Facet facet{points[triangle[0]], points[triangle[1]], points[triangle[2]]};
        if (std::min({facet.a.z(), facet.b.z(), facet.c.z()}) >= near_)
            continue;
        const Vec3 ab = facet.b - facet.a, ac = facet.c - facet.a;
        if (!whole || ab.x() * ac.y() > ab.y() * ac.x())
            facets_.push_back(facet);
    }
    const Vec2 size = high - low_;
    // About one cell a facet, and no more cells than memory takes lightly.
    const double area = std::max(size.x() * size.y(), 1e-6);
    cell_ = std::sqrt(area / std::clamp(static_cast<double>(facets_.size()), 16.0, 250000.0));
    columns_ = static_cast<int>(size.x() / cell_) + 1;
    rows_ = static_cast<int>(size.y() / cell_) + 1;
    // Counted, then listed: cell by cell, one after the other.
    first_.assign(static_cast<std::size_t>(columns_) * static_cast<std::size_t>(rows_) + 1, 0);
    for (const Facet& facet : facets_)
        visit_cells(facet, [&](std::size_t cell) { ++first_[cell + 1]; });
    std::partial_sum(first_.begin(), first_.end(), first_.begin());
    listed_.resize(first_.back());
    std::vector<std::uint32_t> next(first_.begin(), first_.end() - 1);
    for (std::uint32_t i = 0; i < facets_.size(); ++i)
        visit_cells(facets_[i], [&](std::size_t cell) { listed_[next[cell]++] = i; });
}

bool SightBlock::hides(const Vec3& projected, double clearance) const {
    const int column = static_cast<int>(std::floor((projected.x() - low_.x()) / cell_));
    const int row = static_cast<int>(std::floor((projected.y() - low_.y()) / cell_));
    if (column < 0 || row < 0 || column >= columns_ || row >= rows_)
        return false;
    const auto cell = static_cast<std::size_t>(row * columns_ + column);
    for (std::uint32_t i = first_[cell]; i < first_[cell + 1]; ++i) {
        const Facet& f = facets_[listed_[i]];
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
