#include "geometry/templates/outlines.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace coilwright {
namespace {

/// One edge as the line or circle it lies on.
struct Curve {
    Vec2 from{0, 0}, to{0, 0};
    double bulge = 0;
    bool round = false;
    Vec2 ahead{1, 0}; // straight
    Vec2 centre{0, 0};
    double radius = 0; // positive
};

Curve curve_of(Vec2 from, const OutlineEdge& edge) {
    Curve curve{from, edge.to, edge.bulge, false, {1, 0}, {0, 0}, 0};
    if (const auto arc = arc_of(BoundaryEdge{0, from, edge.to, edge.bulge})) {
        curve.round = true;
        curve.centre = arc->centre;
        curve.radius = arc->radius;
    } else {
        curve.ahead = (edge.to - from).normalized();
    }
    return curve;
}

/// Outwards is to the right of the way.
Vec2 right_of_way(Vec2 ahead) {
    return {ahead.y(), -ahead.x()};
}

Vec2 outward_at(const Curve& curve, Vec2 point) {
    if (!curve.round)
        return right_of_way(curve.ahead);
    const Vec2 radial = (point - curve.centre).normalized();
    return curve.bulge > 0 ? radial : Vec2(-radial);
}

/// False where nothing is left of a circle.
bool move(Curve& curve, double by) {
    if (curve.round) {
        const double radius = curve.radius + (curve.bulge > 0 ? by : -by);
        if (!(radius > 1e-6))
            return false;
        curve.from = curve.centre + (curve.from - curve.centre) * (radius / curve.radius);
        curve.to = curve.centre + (curve.to - curve.centre) * (radius / curve.radius);
        curve.radius = radius;
        return true;
    }
    const Vec2 shift = right_of_way(curve.ahead) * by;
    curve.from += shift;
    curve.to += shift;
    return true;
}

std::vector<Vec2> line_circle(const Curve& line, const Curve& circle) {
    const Vec2 off = circle.centre - line.from;
    const double along = off.dot(line.ahead);
    const double across = off.dot(right_of_way(line.ahead));
    const double square = circle.radius * circle.radius - across * across;
    if (square < 0)
        return {};
    const double half = std::sqrt(square);
    return {line.from + line.ahead * (along - half), line.from + line.ahead * (along + half)};
}

std::vector<Vec2> circle_circle(const Curve& a, const Curve& b) {
    const Vec2 off = b.centre - a.centre;
    const double apart = off.norm();
    if (apart < 1e-12)
        return {};
    const double along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
    const double square = a.radius * a.radius - along * along;
    if (square < 0)
        return {};
    const Vec2 ahead = off / apart, foot = a.centre + ahead * along;
    const Vec2 up = right_of_way(ahead) * std::sqrt(square);
    return {foot + up, foot - up};
}

std::vector<Vec2> crossings(const Curve& a, const Curve& b) {
    if (a.round && b.round)
        return circle_circle(a, b);
    if (a.round || b.round)
        return a.round ? line_circle(b, a) : line_circle(a, b);
    const double turn = a.ahead.x() * b.ahead.y() - a.ahead.y() * b.ahead.x();
    if (std::abs(turn) < 1e-9)
        return {};
    const Vec2 off = b.from - a.from;
    return {a.from + a.ahead * ((off.x() * b.ahead.y() - off.y() * b.ahead.x()) / turn)};
}

double bulge_between(const Curve& curve, Vec2 from, Vec2 to) {
    if (!curve.round)
        return 0;
    const Vec2 a = from - curve.centre, b = to - curve.centre;
    double sweep = std::atan2(a.x() * b.y() - a.y() * b.x(), a.dot(b));
    if (curve.bulge > 0 && sweep <= 0)
        sweep += 2 * pi;
    if (curve.bulge < 0 && sweep >= 0)
        sweep -= 2 * pi;
    return std::tan(sweep / 4);
}

/// Whether an edge still runs the way it did.
bool runs_on(const Curve& was, Vec2 from, Vec2 to, double bulge) {
    if (!was.round)
        return (to - from).dot(was.ahead) > 0;
    // An arc that turned round comes out as nearly a whole circle.
    const double before = 4 * std::atan(std::abs(was.bulge));
    return 4 * std::atan(std::abs(bulge)) < before + 0.5 * (2 * pi - before) + 1e-9;
}

} // namespace

std::optional<Outline> moved_out(const Outline& outline, double by) {
    std::vector<Curve> was, curves;
    Vec2 from = outline.from;
    for (const OutlineEdge& edge : outline.edges) {
        was.push_back(curve_of(from, edge));
        curves.push_back(was.back());
        if (!move(curves.back(), by))
            return std::nullopt;
        from = edge.to;
    }
    const std::size_t count = curves.size();
    std::vector<Vec2> corners(count); // at the start of each edge
    for (std::size_t i = 0; i < count; ++i) {
        const std::size_t before = (i + count - 1) % count;
        const Vec2 corner = was[i].from;
        const Vec2 n1 = outward_at(was[before], corner), n2 = outward_at(was[i], corner);
        if (n1.dot(n2) > 1 - 1e-9) { // smooth: it only moves outwards
            corners[i] = corner + n1 * by;
            continue;
        }
        const std::vector<Vec2> found = crossings(curves[before], curves[i]);
        if (found.empty())
            return std::nullopt;
        corners[i] = *std::min_element(found.begin(), found.end(), [&](Vec2 a, Vec2 b) {
            return (a - corner).squaredNorm() < (b - corner).squaredNorm();
        });
    }
    Outline made{corners.front(), {}};
    for (std::size_t i = 0; i < count; ++i) {
        const Vec2 to = corners[(i + 1) % count];
        const double bulge = bulge_between(curves[i], corners[i], to);
        if ((to - corners[i]).norm() < 1e-7)
            continue; // an edge that just vanishes
        if (!runs_on(was[i], corners[i], to, bulge))
            return std::nullopt;
        made.edges.push_back({to, bulge});
    }
    if (made.edges.size() < 2 || !(area_of(made) > 1e-9))
        return std::nullopt;
    return made;
}

double area_of(const Outline& outline) {
    double twice = 0;
    Vec2 from = outline.from;
    for (const OutlineEdge& edge : outline.edges) {
        twice += from.x() * edge.to.y() - from.y() * edge.to.x();
        if (const auto arc = arc_of(BoundaryEdge{0, from, edge.to, edge.bulge})) {
            const double sweep = 4 * std::atan(edge.bulge);
            twice += arc->radius * arc->radius * (sweep - std::sin(sweep));
        }
        from = edge.to;
    }
    return twice / 2;
}

double length_of(const Outline& outline) {
    double sum = 0;
    Vec2 from = outline.from;
    for (const OutlineEdge& edge : outline.edges) {
        sum += length_of(BoundaryEdge{0, from, edge.to, edge.bulge});
        from = edge.to;
    }
    return sum;
}

OutlinePlace place_along(const Outline& outline, double distance) {
    Vec2 from = outline.from;
    for (std::size_t i = 0; i < outline.edges.size(); ++i) {
        const OutlineEdge& edge = outline.edges[i];
        const double length = length_of(BoundaryEdge{0, from, edge.to, edge.bulge});
        if (distance > length && i + 1 < outline.edges.size()) {
            distance -= length;
            from = edge.to;
            continue;
        }
        const double part = length > 0 ? std::clamp(distance / length, 0.0, 1.0) : 0;
        const Curve curve = curve_of(from, edge);
        Vec2 at = from + (edge.to - from) * part;
        if (curve.round) {
            const double turn = 4 * std::atan(edge.bulge) * part;
            const Vec2 arm = from - curve.centre;
            at = curve.centre + Vec2(arm.x() * std::cos(turn) - arm.y() * std::sin(turn),
                                     arm.x() * std::sin(turn) + arm.y() * std::cos(turn));
        }
        return {at, outward_at(curve, at)};
    }
    return {outline.from, {0, -1}};
}

} // namespace coilwright
