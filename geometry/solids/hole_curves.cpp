#include "geometry/solids/hole_curves.hpp"

#include "geometry/solids/curve_sampling.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr double growth = 0.4;       // of edges, per metre away from a short stretch
constexpr double over_stretch = 1.5; // edges beside a stretch, over its length
constexpr double beside_bend = 2;    // edges beside a bend, over the distance from it

/// Places along a piece of outline at which it passes a height, a margin clear of its ends.
std::vector<double> crossings(const SectionPiece& piece, double z, double margin) {
    std::vector<double> found;
    const double length = piece.length();
    const auto offer = [&](double s) {
        if (s > margin && s < length - margin)
            found.push_back(s);
    };
    if (piece.radius == 0) {
        const double rise = piece.end.y() - piece.start.y();
        if (std::abs(rise) > margin)
            offer((z - piece.start.y()) / rise * length);
    } else if (std::abs(z - piece.centre.y()) < piece.radius) {
        const double up = z - piece.centre.y();
        const double across = std::sqrt(piece.radius * piece.radius - up * up);
        if (across > margin) { // else it only grazes the height
            offer(piece.place(piece.centre + Vec2(across, up)));
            offer(piece.place(piece.centre + Vec2(-across, up)));
        }
    }
    return found;
}

} // namespace

HoleCurves::HoleCurves(const RevolvedSurface& wall, const HoleAxis& axis,
                       const HoleOutline& outline, double tolerance)
    : wall_(wall), axis_(axis), outline_(outline), tolerance_(tolerance) {
    for (const SectionPiece& piece : outline.pieces) {
        std::vector<double> ends{0, piece.length()};
        for (const double kink : wall.kinks())
            for (const double s : crossings(piece, kink, 2 * tolerance))
                ends.push_back(s);
        std::sort(ends.begin(), ends.end());
        ends_.push_back(std::move(ends));
    }
    add_events();
}

void HoleCurves::add_events() {
    for (std::size_t i = 0; i < ends_.size(); ++i)
        for (std::size_t k = 1; k < ends_[i].size(); ++k) {
            const double stretch = ends_[i][k] - ends_[i][k - 1];
            for (const double s : {ends_[i][k - 1], ends_[i][k]})
                events_.push_back({outline_.pieces[i].at(s), stretch});
        }
}

Vec3 HoleCurves::point(const Vec2& at) const {
    const double r = wall_.radius_at(at.y());
    const Vec2 plan = std::sqrt((r - at.x()) * (r + at.x())) * axis_.along + at.x() * axis_.left;
    return {plan.x(), plan.y(), at.y()};
}

double HoleCurves::edge_about(const Vec2& at) const {
    double edge = wall_.spacing_at(at.y());
    const double from_bend = wall_.way_to_kink(at.y());
    edge = std::min(edge, std::max(beside_bend * from_bend, edge / 4));
    for (const Event& event : events_)
        edge = std::min(edge, over_stretch * event.stretch + growth * (event.at - at).norm());
    return edge;
}

std::vector<Vec3> HoleCurves::between_ends(std::size_t i, double spacing) const {
    const SectionPiece& piece = outline_.pieces[i];
    std::vector<Vec3> points;
    for (std::size_t k = 1; k < ends_[i].size(); ++k) {
        const CurveStretch stretch{
            [&](double s) { return point(piece.at(s)); },
            [&](double s) { return std::min(spacing, edge_about(piece.at(s))); }, ends_[i][k - 1],
            ends_[i][k]};
        const std::vector<double> places = spaced_parameters(stretch, tolerance_);
        for (std::size_t j = 1; j + 1 < places.size(); ++j)
            points.push_back(point(piece.at(places[j])));
        if (k + 1 < ends_[i].size())
            points.push_back(point(piece.at(places.back())));
    }
    return points;
}

} // namespace coilwright
