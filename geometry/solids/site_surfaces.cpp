#include "geometry/solids/site_surfaces.hpp"

#include "geometry/solids/patch.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

int add_shape(PlanExpression& plan, const Shape& shape) {
    plan.shapes.push_back(shape);
    return static_cast<int>(plan.shapes.size()) - 1;
}

/// The edge's points from its start, without its end.
void append_edge(const BoundaryEdge& edge, double tolerance, std::vector<Vec2>& points) {
    points.push_back(edge.from);
    const auto arc = arc_of(edge);
    if (!arc)
        return;
    const double sweep = 4 * std::atan(edge.bulge);
    const double most = 2 * std::acos(std::max(0.5, 1 - tolerance / arc->radius));
    const int count = std::max(2, static_cast<int>(std::ceil(std::abs(sweep) / most)));
    const Vec2 off = edge.from - arc->centre;
    for (int k = 1; k < count; ++k) {
        const double angle = sweep * k / count, c = std::cos(angle), s = std::sin(angle);
        points.emplace_back(arc->centre +
                            Vec2(c * off.x() - s * off.y(), s * off.x() + c * off.y()));
    }
}

/// Makes the surface of a mesh the top of a slab.
void thicken(Mesh& mesh, const std::vector<Chain>& boundary, double depth) {
    const auto count = static_cast<std::uint32_t>(mesh.vertices.size());
    const std::size_t tops = mesh.triangles.size();
    for (std::uint32_t v = 0; v < count; ++v)
        mesh.vertices.emplace_back(mesh.vertices[v] - Vec3(0, 0, depth));
    for (std::size_t t = 0; t < tops; ++t) {
        const auto [a, b, c] = mesh.triangles[t];
        mesh.triangles.push_back({a + count, c + count, b + count});
    }
    for (const Chain& chain : boundary)
        for (const auto& [a, b] : edges_of(chain)) {
            mesh.triangles.push_back({a, a + count, b});
            mesh.triangles.push_back({b, a + count, b + count});
        }
}

} // namespace

PlanExpression floor_expression(const BuildingForm& building) {
    PlanExpression plan = room_expression(building, height_tie);
    std::vector<int> rings;
    for (const DomeForm& dome : building.domes)
        rings.push_back(add_shape(plan, Disc{dome.at, outside_radius(dome, -height_tie)}));
    for (PlanTerm& term : plan.terms)
        if (find_tunnel(building, term.element))
            term.less.insert(term.less.end(), rings.begin(), rings.end());
    return plan;
}

PlanExpression ground_expression(const BuildingForm& building, double level, double margin) {
    const PlanExpression footprint = footprint_expression(building, level);
    PlanExpression plan;
    plan.shapes = footprint.shapes;
    std::vector<int> less;
    for (const PlanTerm& term : footprint.terms)
        less.push_back(term.solid);
    for (const DomeForm& dome : building.domes) {
        double reach = outside_radius(dome, level);
        for (const ButtressForm& pier : building.buttresses)
            if (pier.dome == dome.id)
                reach = std::max(reach, outer_face(pier, level));
        plan.terms.push_back({dome.id, add_shape(plan, Disc{dome.at, reach + margin}), less});
    }
    for (const TunnelForm& tunnel : building.tunnels) {
        Box box = tunnel_body(tunnel, level);
        box.low -= margin;
        box.high += margin;
        plan.terms.push_back({tunnel.id, add_shape(plan, box), less});
        const Vec2 end = box.origin + box.to * box.axis;
        plan.terms.push_back({tunnel.id, add_shape(plan, Disc{end, box.high}), less});
    }
    return plan;
}

Mesh level_mesh(const Region& region, double z, double depth, double tolerance) {
    Mesh mesh;
    const LevelSurface surface(z);
    Patch patch;
    patch.surface = &surface;
    for (const BoundaryLoop& loop : region.loops) {
        std::vector<Vec2> points;
        for (const BoundaryEdge& edge : loop.edges)
            append_edge(edge, tolerance, points);
        Chain chain;
        chain.closed = true;
        for (const Vec2& point : points) {
            chain.vertices.push_back(static_cast<std::uint32_t>(mesh.vertices.size()));
            mesh.vertices.emplace_back(point.x(), point.y(), z);
        }
        patch.boundary.push_back(std::move(chain));
    }
    if (patch.boundary.empty() || mesh_patch(patch, tolerance, mesh))
        return {};
    if (depth > 0)
        thicken(mesh, patch.boundary, depth);
    return mesh;
}

} // namespace coilwright
