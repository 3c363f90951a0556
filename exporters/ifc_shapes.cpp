#include "exporters/ifc_shapes.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr int head_steps = 16; // a side
constexpr double chord_tolerance = 0.0005;

Vec2 turned(const Vec2& v, double angle) {
    const double c = std::cos(angle), s = std::sin(angle);
    return {c * v.x() - s * v.y(), s * v.x() + c * v.y()};
}

// Heights from the springing to the top, dense where a curve closes.
double head_height(const OpeningForm& form, int step) {
    return form.springing + (form.top - form.springing) * std::sin(pi / 2 * step / head_steps);
}

std::vector<Vec2> loop_polygon(const BoundaryLoop& loop) {
    std::vector<Vec2> polygon;
    for (const BoundaryEdge& edge : loop.edges) {
        polygon.push_back(edge.from);
        const double sweep = 4 * std::atan(edge.bulge);
        if (sweep == 0)
            continue;
        const Vec2 chord = edge.to - edge.from;
        // The centre lies left of the chord where the arc turns left by less than a half.
        const double radius = chord.norm() / (2 * std::sin(std::abs(sweep) / 2));
        const double high = chord.norm() / (2 * std::tan(sweep / 2));
        const Vec2 left(-chord.y(), chord.x());
        const Vec2 centre = (edge.from + edge.to) / 2 + left.normalized() * high;
        const double most = 2 * std::acos(std::max(0.0, 1 - chord_tolerance / radius));
        const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(sweep) / most)));
        for (int k = 1; k < pieces; ++k)
            polygon.push_back(centre + turned(edge.from - centre, sweep * k / pieces));
    }
    return polygon;
}

// By the crossings of a ray to the east.
bool holds(const std::vector<Vec2>& polygon, const Vec2& point) {
    bool inside = false;
    for (std::size_t k = 0; k < polygon.size(); ++k) {
        const Vec2& a = polygon[k];
        const Vec2& b = polygon[(k + 1) % polygon.size()];
        if ((a.y() > point.y()) != (b.y() > point.y()) &&
            point.x() < a.x() + (point.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x()))
            inside = !inside;
    }
    return inside;
}

} // namespace

std::vector<Vec2> opening_outline(const OpeningForm& form) {
    const double a = form.half_width;
    std::vector<Vec2> outline; // up the left side first: seen along the axis, u counts to the left
    std::vector<Vec2> side;    // from the sill up, without points on the axis
    if (form.head_kind == HeadKind::circle) {
        outline.emplace_back(0, form.sill);
        for (int k = 1; k < 2 * head_steps; ++k) {
            const double angle = pi * k / (2 * head_steps);
            side.emplace_back(a * std::sin(angle), form.sill + a - a * std::cos(angle));
        }
    } else {
        side.emplace_back(a, form.sill);
        if (form.head_kind == HeadKind::square)
            side.emplace_back(a, form.top);
        else
            for (int k = 0; k < head_steps; ++k)
                side.emplace_back(half_width(form, head_height(form, k)), head_height(form, k));
    }
    outline.insert(outline.end(), side.begin(), side.end());
    if (form.head_kind != HeadKind::square)
        outline.emplace_back(0, form.top);
    for (auto at = side.rbegin(); at != side.rend(); ++at)
        outline.emplace_back(-at->x(), at->y());
    return outline;
}

HoleReach hole_reach(const OpeningPlan& opening, const Schedule& schedule) {
    HoleReach reach;
    if (const TunnelForm* tunnel = find_tunnel(schedule.building, opening.form.in)) {
        if (std::abs(opening.form.axis.dot(tunnel->axis())) > 0.5)
            return {tunnel->reach - tunnel->width, tunnel->reach};
        reach = {inner_half_width(*tunnel, opening.form.top),
                 outer_half_width(*tunnel, opening.form.sill)};
    } else {
        const DomeForm& dome = *find_dome(schedule.building, opening.form.in);
        double nearest = inside_radius(dome, opening.form.sill), farthest = 0;
        for (int k = 0; k <= 64; ++k) {
            const double z = opening.form.sill + (opening.form.top - opening.form.sill) * k / 64;
            const double a = half_width(opening.form, z), r = inside_radius(dome, z);
            farthest = std::max(farthest, outside_radius(dome, z));
            nearest = std::min(nearest, std::sqrt(std::max(0.0, r * r - a * a)));
        }
        if (dome.second_wythe_top > opening.form.sill)
            farthest += dome.width;
        reach = {nearest, farthest};
    }
    if (opening.form.niche_depth > 0)
        reach.to = std::min(reach.to, reach.from + opening.form.niche_depth);
    return reach;
}

std::vector<PlanFace> faces_of(const Region& region) {
    std::vector<PlanFace> faces;
    // The largest loops come first: a hole lies in the last outline that holds its first point.
    for (const BoundaryLoop& loop : region.loops)
        if (loop.area > 0)
            faces.push_back({loop_polygon(loop), {}});
    for (const BoundaryLoop& loop : region.loops) {
        if (loop.area > 0)
            continue;
        const auto holder = std::find_if(faces.rbegin(), faces.rend(), [&](const PlanFace& face) {
            return holds(face.outline, loop.edges.front().from);
        });
        if (holder != faces.rend())
            holder->holes.push_back(loop_polygon(loop));
    }
    return faces;
}

HoleReach sleeve_reach(const SleeveForm& sleeve, const BuildingPlan& plan) {
    const Finish& finish = plan.design.finish;
    const double z = sleeve.height;
    // Below the floor and below the ground there is no plaster.
    const double within = z > 0 ? finish.inside_plaster : 0;
    const double without = z > plan.design.ground.level ? finish.outside_plaster : 0;
    const WallBand wall = wall_of(sleeve, plan.schedule.building, z);
    return {wall.inside - within, wall.outside + without};
}

std::vector<Vec2> circle_outline(double radius) {
    constexpr int sides = 24;
    std::vector<Vec2> outline;
    for (int i = 0; i < sides; ++i)
        outline.emplace_back(radius * std::cos(2 * pi * i / sides),
                             radius * std::sin(2 * pi * i / sides));
    return outline;
}

double polygon_area(const std::vector<Vec2>& polygon) {
    double twice = 0;
    for (std::size_t k = 0; k < polygon.size(); ++k) {
        const Vec2& a = polygon[k];
        const Vec2& b = polygon[(k + 1) % polygon.size()];
        twice += a.x() * b.y() - a.y() * b.x();
    }
    return twice / 2;
}

} // namespace coilwright
