#include "geometry/drawing/placer.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

bool meets(const Corners& corners, const std::vector<Corners>& others) {
    return std::any_of(others.begin(), others.end(),
                       [&](const Corners& other) { return overlap(corners, other); });
}

Corners square_about(Vec2 centre, double radius) {
    return corners(PaperBox{centre.x() - radius, centre.y() - radius, centre.x() + radius,
                            centre.y() + radius});
}

} // namespace

Corners grown(const Corners& points, double by) {
    const Vec2 ahead = (points[1] - points[0]).normalized() * by;
    const Vec2 up = (points[3] - points[0]).normalized() * by;
    return {points[0] - ahead - up, points[1] + ahead - up, points[2] + ahead + up,
            points[3] - ahead + up};
}

void Placer::take_line(Vec2 from, Vec2 to, double width) {
    lines_.push_back(corners(from, to, width));
}

void Placer::take_arc(Vec2 centre, double radius, double start, double end) {
    // Chords that leave the arc by at most 0.2 mm.
    const double step = radius > 0.4 ? 2 * std::acos(1 - 0.2 / radius) : pi / 2;
    const int pieces = std::clamp(static_cast<int>(std::ceil((end - start) / step)), 1, 400);
    const auto at = [&](int i) {
        const double angle = start + (end - start) * i / pieces;
        return Vec2(centre + radius * Vec2(std::cos(angle), std::sin(angle)));
    };
    for (int i = 0; i < pieces; ++i)
        take_line(at(i), at(i + 1));
}

bool Placer::free(const Corners& points, double clearance) const {
    const Corners around = grown(points, clearance);
    return inside(bounds(points), frame_) && !meets(around, taken_) && !meets(around, lines_);
}

bool Placer::free_for_leader(Vec2 from, Vec2 to) const {
    // What it points at may stand close by: its last millimetre may touch.
    const Vec2 way = to - from;
    const double length = way.norm();
    if (length <= 1)
        return true;
    return !meets(corners(from, from + way * ((length - 1) / length), 0.4), taken_);
}

std::optional<TextItem> Placer::place(const std::vector<TextItem>& candidates, double clearance) {
    for (const TextItem& candidate : candidates) {
        const Corners box = corners(candidate, measure_);
        if (free(box, clearance)) {
            take(box);
            return candidate;
        }
    }
    return std::nullopt;
}

std::optional<Placer::Led> Placer::place_led(const std::vector<TextItem>& candidates, Vec2 target,
                                             double near, const LeaderRule& allowed) {
    for (const TextItem& candidate : candidates) {
        const Corners points = corners(candidate, measure_);
        if (!free(points))
            continue;
        const PaperBox box = grown(bounds(points), 0.8);
        const Vec2 from(std::clamp(target.x(), box.left, box.right),
                        std::clamp(target.y(), box.bottom, box.top));
        const bool led = (target - from).norm() > near;
        if (led && (!free_for_leader(from, target) || (allowed && !allowed(from, target))))
            continue;
        take(points);
        if (led)
            take_line(from, target, 0.4);
        return Led{candidate, led ? from : target, target};
    }
    return std::nullopt;
}

std::optional<Vec2> Placer::place_disc(const std::vector<Vec2>& centres, double radius, Vec2 target,
                                       bool leader_over_all) {
    for (const Vec2& centre : centres) {
        const Corners box = square_about(centre, radius);
        const Vec2 to_target = target - centre;
        const double distance = to_target.norm();
        const bool led = distance > radius;
        const Vec2 from = led ? Vec2(centre + to_target * (radius / distance)) : target;
        if (!free(box) || (led && !leader_over_all && !free_for_leader(from, target)))
            continue;
        take(box);
        if (led)
            take_line(from, target, 0.4);
        return centre;
    }
    return std::nullopt;
}

std::vector<Vec2> places_about(Vec2 point, Vec2 outward, double nearest, double farthest,
                               double widest) {
    std::vector<Vec2> places;
    for (double distance = nearest; distance <= farthest; distance += 1.5)
        for (double turn = 0; turn <= widest + 1e-9; turn += pi / 18)
            for (const double side : {1.0, -1.0}) {
                if (turn == 0 && side < 0)
                    continue;
                const double c = std::cos(turn * side), s = std::sin(turn * side);
                places.push_back(point + distance * Vec2(c * outward.x() - s * outward.y(),
                                                         s * outward.x() + c * outward.y()));
            }
    return places;
}

} // namespace coilwright
