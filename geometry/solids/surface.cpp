#include "geometry/solids/surface.hpp"

#include "geometry/base/bearing.hpp"

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

SectionPiece straight_piece(const Vec2& start, const Vec2& end) {
    SectionPiece piece;
    piece.start = start;
    piece.end = end;
    return piece;
}

SectionPiece arc_piece(const Vec2& centre, double radius, double start_angle, double turn) {
    SectionPiece piece;
    piece.centre = centre;
    piece.radius = radius;
    piece.start_angle = start_angle;
    piece.turn = turn;
    piece.start = piece.at(0);
    piece.end = piece.at(piece.length());
    return piece;
}

double SectionPiece::length() const {
    return radius > 0 ? radius * std::abs(turn) : (end - start).norm();
}

Vec2 SectionPiece::at(double s) const {
    if (radius > 0) {
        const double angle = start_angle + std::copysign(s / radius, turn);
        return centre + radius * Vec2(std::cos(angle), std::sin(angle));
    }
    const double whole = length();
    return whole > 0 ? start + (end - start) * (s / whole) : start;
}

double SectionPiece::place(const Vec2& point) const {
    if (radius > 0) {
        const Vec2 spoke = point - centre;
        const double sign = turn < 0 ? -1 : 1;
        // From the middle of the arc, so that both ends stay clear of the cut of the angle.
        const double middle = start_angle + turn / 2;
        const double off = std::remainder(std::atan2(spoke.y(), spoke.x()) - middle, 2 * pi);
        return length() / 2 + sign * off * radius;
    }
    const double whole = length();
    return whole > 0 ? (point - start).dot(end - start) / whole : 0;
}

double SectionPiece::distance(const Vec2& point) const {
    if (radius > 0)
        return std::abs((point - centre).norm() - radius);
    const Vec2 run = end - start, to = point - start;
    return std::abs(run.x() * to.y() - run.y() * to.x()) / run.norm();
}

ExtrudedSurface::ExtrudedSurface(const Vec3& origin, const Vec2& axis, const SectionPiece& section,
                                 double tolerance)
    : origin_(origin), along_(axis.x(), axis.y(), 0), left_(-axis.y(), axis.x(), 0),
      section_(section),
      spacing_(edge_for_tolerance(section.radius > 0 ? 1 / section.radius : 0, 0, tolerance)) {}

Vec2 ExtrudedSurface::in_section(const Vec3& point) const {
    const Vec3 from = point - origin_;
    return {from.dot(left_), from.z()};
}

Vec2 ExtrudedSurface::flatten(const Vec3& point) const {
    return {(point - origin_).dot(along_), section_.place(in_section(point))};
}

Vec3 ExtrudedSurface::point(const Vec2& flat) const {
    const Vec2 at = section_.at(flat.y());
    return origin_ + flat.x() * along_ + at.x() * left_ + Vec3(0, 0, at.y());
}

double ExtrudedSurface::deviation(const Vec3& point) const {
    return section_.distance(in_section(point));
}

std::vector<Vec2> ExtrudedSurface::pattern(const Vec2& low, const Vec2& high) const {
    return std::isfinite(spacing_) ? hexagonal_grid(low, high, spacing_) : std::vector<Vec2>{};
}

std::vector<Vec2> hexagonal_grid(const Vec2& low, const Vec2& high, double spacing) {
    const double width = high.x() - low.x(), height = high.y() - low.y();
    const int rows = static_cast<int>(std::ceil(height / (spacing * std::sqrt(0.75))));
    const int columns = static_cast<int>(std::ceil(width / spacing));
    std::vector<Vec2> grid;
    for (int j = 1; j < rows; ++j)
        for (int i = 0; i <= columns; ++i)
            grid.emplace_back(low.x() + width * (i + (j % 2) / 2.0) / columns,
                              low.y() + height * j / rows);
    return grid;
}

} // namespace coilwright
