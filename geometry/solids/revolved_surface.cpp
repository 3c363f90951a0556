#include "geometry/solids/revolved_surface.hpp"

#include "geometry/base/bearing.hpp"

#include <algorithm>
#include <cmath>
#include <functional>

namespace coilwright {

namespace {

constexpr int least_around = 8; // edges round a circle, however coarse the tolerance

SectionTrace::Spacing spacing_for(double tolerance) {
    return [tolerance](double bend, double upright, double radius) {
        return std::min(edge_for_tolerance(bend, upright / radius, tolerance),
                        2 * pi * radius / least_around);
    };
}

} // namespace

RevolvedSurface::RevolvedSurface(Section meridian, double tolerance, const Vec2& axis)
    : meridian_(std::move(meridian)), axis_(axis),
      trace_(meridian_, tolerance, spacing_for(tolerance)) {
    const auto& nodes = trace_.nodes();
    plane_radii_.push_back(nodes.front().offset);
    for (std::size_t i = 1; i < nodes.size(); ++i) {
        const double below = nodes[i - 1].offset, radius = nodes[i].offset;
        const double run = radius - below;
        // The integral of ds / r along a straight line.
        const double ratio =
            std::abs(run) > 1e-9 * radius ? std::log(radius / below) / run : 1 / radius;
        plane_radii_.push_back(plane_radii_.back() *
                               std::exp(-(nodes[i].arc - nodes[i - 1].arc) * ratio));
    }
}

double RevolvedSurface::plane_radius_at(double z) const {
    const std::size_t i = trace_.above(z);
    const SectionTrace::Node &low = trace_.nodes()[i - 1], &high = trace_.nodes()[i];
    const double share = std::clamp((z - low.z) / (high.z - low.z), 0.0, 1.0);
    return plane_radii_[i - 1] + share * (plane_radii_[i] - plane_radii_[i - 1]);
}

double RevolvedSurface::height_at(double plane_radius) const {
    auto found =
        std::upper_bound(plane_radii_.begin(), plane_radii_.end(), plane_radius, std::greater<>());
    found = std::clamp(found, plane_radii_.begin() + 1, plane_radii_.end() - 1);
    const auto i = static_cast<std::size_t>(found - plane_radii_.begin());
    const SectionTrace::Node &low = trace_.nodes()[i - 1], &high = trace_.nodes()[i];
    const double share = std::clamp(
        (plane_radii_[i - 1] - plane_radius) / (plane_radii_[i - 1] - plane_radii_[i]), 0.0, 1.0);
    return low.z + share * (high.z - low.z);
}

Vec2 RevolvedSurface::flatten(const Vec3& point) const {
    return (point.head<2>() - axis_).normalized() * plane_radius_at(point.z());
}

Vec3 RevolvedSurface::point(const Vec2& flat) const {
    const double radius = flat.norm(), z = height_at(radius);
    const Vec2 in_plan = axis_ + flat * (meridian_.offset(z) / radius);
    return {in_plan.x(), in_plan.y(), z};
}

double RevolvedSurface::spacing(const Vec2& flat) const {
    return trace_.spacing_at(height_at(flat.norm()));
}

double RevolvedSurface::deviation(const Vec3& point) const {
    return trace_.distance((point.head<2>() - axis_).norm(), point.z());
}

Vec2 RevolvedSurface::drawn_to_bend(const Vec2& flat, double reach) const {
    if (trace_.kinks().empty())
        return flat;
    const double* kink = trace_.kink_near(height_at(flat.norm()), reach);
    return kink ? Vec2(flat.normalized() * plane_radius_at(*kink)) : flat;
}

double RevolvedSurface::bend_between(const Vec3& from, const Vec3& to) const {
    return trace_.kink_between(from.z(), to.z());
}

// Rows along the circles of each stretch between breaks, every other row turned by half a step.
std::vector<Vec2> RevolvedSurface::pattern(const Vec2&, const Vec2&) const {
    std::vector<Vec2> points;
    int row = 0;
    for (const double z : trace_.rows()) {
        const double plane_radius = plane_radius_at(z);
        const int count = std::max(
            least_around,
            static_cast<int>(std::ceil(2 * pi * meridian_.offset(z) / trace_.spacing_at(z))));
        const double shift = ++row % 2 * pi / count;
        for (int i = 0; i < count; ++i) {
            const double angle = shift + 2 * pi * i / count;
            points.emplace_back(plane_radius * std::cos(angle), plane_radius * std::sin(angle));
        }
    }
    return points;
}

} // namespace coilwright
