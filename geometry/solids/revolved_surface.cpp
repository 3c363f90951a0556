#include "geometry/solids/revolved_surface.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

constexpr double growth = 0.3;       // of the spacing, per metre along the meridian
constexpr double least_kink = 0.005; // radians
constexpr int least_around = 8;      // edges round a circle, however coarse the tolerance

} // namespace

RevolvedSurface::RevolvedSurface(Meridian meridian, double tolerance)
    : meridian_(std::move(meridian)) {
    trace(tolerance);
    set_plane_radii();
    set_spacings(tolerance);
}

void RevolvedSurface::trace(double tolerance) {
    std::vector<double> heights{meridian_.low, meridian_.high};
    for (const double z : meridian_.breaks)
        if (z > meridian_.low + 1e-5 && z < meridian_.high - 1e-5)
            heights.push_back(z);
    std::sort(heights.begin(), heights.end());
    const auto close = [](double a, double b) { return b - a < 1e-5; };
    heights.erase(std::unique(heights.begin(), heights.end(), close), heights.end());
    const auto node_at = [&](double z) { return Node{z, meridian_.radius(z), 0, 0, 0, true}; };
    const double longest = (meridian_.high - meridian_.low + meridian_.radius(meridian_.low)) / 64;
    nodes_.push_back(node_at(heights.front()));
    for (std::size_t i = 1; i < heights.size(); ++i)
        refine(nodes_.back(), node_at(heights[i]), tolerance / 200, longest, 0);
}

// Appends nodes after `from` up to and with `to`. Halving the height also resolves the crown of a
// curve that ends level, where the radius runs away.
void RevolvedSurface::refine(const Node& from, const Node& to, double error, double longest,
                             int depth) {
    const double z = (from.z + to.z) / 2;
    const Node middle{z, meridian_.radius(z), 0, 0, 0, false};
    const Vec2 chord(to.radius - from.radius, to.z - from.z);
    const Vec2 off(middle.radius - from.radius, middle.z - from.z);
    const double length = chord.norm();
    const double deviation = std::abs(chord.x() * off.y() - chord.y() * off.x()) / length;
    if (depth < 30 && (length > longest || deviation > error || depth < 2)) {
        const Node start = from; // `from` may live in the vector that grows
        refine(start, middle, error, longest, depth + 1);
        refine(middle, to, error, longest, depth + 1);
    } else {
        nodes_.push_back(to);
    }
}

void RevolvedSurface::set_plane_radii() {
    nodes_.front().plane_radius = nodes_.front().radius;
    for (std::size_t i = 1; i < nodes_.size(); ++i) {
        const Node& below = nodes_[i - 1];
        Node& node = nodes_[i];
        const double run = node.radius - below.radius;
        const double length = std::hypot(run, node.z - below.z);
        // The integral of ds / r along a straight line.
        const double ratio = std::abs(run) > 1e-9 * node.radius
                                 ? std::log(node.radius / below.radius) / run
                                 : 1 / node.radius;
        node.arc = below.arc + length;
        node.plane_radius = below.plane_radius * std::exp(-length * ratio);
    }
}

void RevolvedSurface::set_spacings(double tolerance) {
    const std::size_t count = nodes_.size();
    const auto direction = [&](std::size_t i) { // of the line that starts at node i
        return Vec2(nodes_[i + 1].radius - nodes_[i].radius, nodes_[i + 1].z - nodes_[i].z)
            .normalized();
    };
    std::vector<double> bend(count, 0), turns(count, 0); // curvature of the meridian
    for (std::size_t i = 1; i + 1 < count; ++i) {
        const Vec2 u = direction(i - 1), v = direction(i);
        turns[i] = std::abs(std::atan2(u.x() * v.y() - u.y() * v.x(), u.dot(v)));
        bend[i] = 2 * turns[i] / (nodes_[i + 1].arc - nodes_[i - 1].arc);
    }
    for (std::size_t i = 0; i < count; ++i) {
        if (!nodes_[i].is_break)
            continue;
        bend[i] = std::max(i > 0 ? bend[i - 1] : 0, i + 1 < count ? bend[i + 1] : 0);
        const bool inner = i > 0 && i + 1 < count;
        if (inner && turns[i] > least_kink + bend[i] * (nodes_[i + 1].arc - nodes_[i - 1].arc))
            kinks_.push_back(nodes_[i].z);
    }
    for (std::size_t i = 0; i < count; ++i) {
        const double upright = direction(std::min(i, count - 2)).y();
        nodes_[i].spacing =
            std::min(edge_for_tolerance(bend[i], upright / nodes_[i].radius, tolerance),
                     2 * pi * nodes_[i].radius / least_around);
    }
    limit_between_kinks();
    const auto limit = [&](std::size_t i, std::size_t by) {
        const double apart = std::abs(nodes_[i].arc - nodes_[by].arc);
        nodes_[i].spacing = std::min(nodes_[i].spacing, nodes_[by].spacing + growth * apart);
    };
    for (std::size_t i = 1; i < count; ++i)
        limit(i, i - 1);
    for (std::size_t i = count - 1; i-- > 0;)
        limit(i, i + 1);
}

/// Circles that lie close together want edges not much longer than they are apart.
void RevolvedSurface::limit_between_kinks() {
    std::size_t last = 0;
    for (std::size_t i = 1; i < nodes_.size(); ++i) {
        if (i + 1 < nodes_.size() && !std::binary_search(kinks_.begin(), kinks_.end(), nodes_[i].z))
            continue;
        const double apart = nodes_[i].arc - nodes_[last].arc;
        for (const std::size_t end : {last, i})
            nodes_[end].spacing =
                std::min(nodes_[end].spacing, std::max(1.5 * apart, nodes_[end].spacing / 8));
        last = i;
    }
}

double RevolvedSurface::between(double z, double Node::*value) const {
    auto above = std::upper_bound(nodes_.begin(), nodes_.end(), z,
                                  [](double height, const Node& node) { return height < node.z; });
    above = std::clamp(above, nodes_.begin() + 1, nodes_.end() - 1);
    const Node &low = above[-1], &high = above[0];
    const double share = std::clamp((z - low.z) / (high.z - low.z), 0.0, 1.0);
    return low.*value + share * (high.*value - low.*value);
}

double RevolvedSurface::spacing_at(double z) const {
    return between(z, &Node::spacing);
}

double RevolvedSurface::way_to_kink(double z) const {
    double nearest = std::numeric_limits<double>::infinity();
    for (const double kink : kinks_)
        nearest = std::min(nearest, std::abs(between(kink, &Node::arc) - between(z, &Node::arc)));
    return nearest;
}

Vec2 RevolvedSurface::flatten(const Vec3& point) const {
    return point.head<2>().normalized() * between(point.z(), &Node::plane_radius);
}

Vec3 RevolvedSurface::point(const Vec2& flat) const {
    const double radius = flat.norm();
    auto above =
        std::upper_bound(nodes_.begin(), nodes_.end(), radius, [](double wanted, const Node& node) {
            return wanted > node.plane_radius;
        });
    above = std::clamp(above, nodes_.begin() + 1, nodes_.end() - 1);
    const Node &low = above[-1], &high = above[0];
    const double share =
        std::clamp((low.plane_radius - radius) / (low.plane_radius - high.plane_radius), 0.0, 1.0);
    const double z = low.z + share * (high.z - low.z);
    const Vec2 in_plan = flat * (meridian_.radius(z) / radius);
    return {in_plan.x(), in_plan.y(), z};
}

double RevolvedSurface::spacing(const Vec2& flat) const {
    return spacing_at(point(flat).z());
}

double RevolvedSurface::deviation(const Vec3& point) const {
    // Height less radius grows all along the meridian, upright or level: it finds the place.
    const double radius = point.head<2>().norm();
    auto above =
        std::upper_bound(nodes_.begin(), nodes_.end(), point.z() - radius,
                         [](double key, const Node& node) { return key < node.z - node.radius; });
    above = std::clamp(above, nodes_.begin() + 1, nodes_.end() - 1);
    const Node &low = above[-1], &high = above[0];
    const Vec2 chord(high.radius - low.radius, high.z - low.z);
    const Vec2 off(radius - low.radius, point.z() - low.z);
    return std::abs(chord.x() * off.y() - chord.y() * off.x()) / chord.norm();
}

Vec2 RevolvedSurface::drawn_to_bend(const Vec2& flat, double reach) const {
    if (kinks_.empty())
        return flat;
    const double z = point(flat).z();
    const double arc = between(z, &Node::arc);
    for (const double kink : kinks_)
        if (std::abs(between(kink, &Node::arc) - arc) < reach)
            return flat.normalized() * between(kink, &Node::plane_radius);
    return flat;
}

double RevolvedSurface::bend_between(const Vec3& from, const Vec3& to) const {
    for (const double kink : kinks_)
        if ((from.z() - kink) * (to.z() - kink) < 0)
            return (kink - from.z()) / (to.z() - from.z());
    return -1;
}

// Rows along the circles of each stretch between breaks, every other row turned by half a step.
std::vector<Vec2> RevolvedSurface::pattern(const Vec2&, const Vec2&) const {
    std::vector<Vec2> points;
    int row = 0;
    const auto add_row = [&](double z) {
        const double plane_radius = between(z, &Node::plane_radius);
        const int count =
            std::max(least_around,
                     static_cast<int>(std::ceil(2 * pi * meridian_.radius(z) / spacing_at(z))));
        const double shift = ++row % 2 * pi / count;
        for (int i = 0; i < count; ++i) {
            const double angle = shift + 2 * pi * i / count;
            points.emplace_back(plane_radius * std::cos(angle), plane_radius * std::sin(angle));
        }
    };
    std::size_t start = 0;
    for (std::size_t end = 1; end < nodes_.size(); ++end) {
        const bool last = end + 1 == nodes_.size();
        if (!last && !std::binary_search(kinks_.begin(), kinks_.end(), nodes_[end].z))
            continue;
        // Steps between rows: sqrt(3)/2 of an edge, added up along the stretch.
        std::vector<double> steps{0};
        for (std::size_t i = start; i < end; ++i)
            steps.push_back(steps.back() + (nodes_[i + 1].arc - nodes_[i].arc) /
                                               (std::sqrt(0.75) *
                                                (nodes_[i].spacing + nodes_[i + 1].spacing) / 2));
        const int rows = std::max(1, static_cast<int>(std::lround(steps.back())));
        for (int j = 1; j < rows + (last ? 0 : 1); ++j) {
            const double wanted = steps.back() * j / rows;
            const std::size_t i =
                std::lower_bound(steps.begin() + 1, steps.end() - 1, wanted) - steps.begin();
            const double share = (wanted - steps[i - 1]) / (steps[i] - steps[i - 1]);
            const Node &low = nodes_[start + i - 1], &high = nodes_[start + i];
            add_row(j == rows ? nodes_[end].z : low.z + share * (high.z - low.z));
        }
        start = end;
    }
    return points;
}

} // namespace coilwright
