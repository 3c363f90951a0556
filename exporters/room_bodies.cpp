#include "exporters/room_bodies.hpp"

#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/headroom.hpp"
#include "geometry/plan/tunnel_headroom.hpp"
#include "geometry/solids/site_surfaces.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr int around = 96;         // points about a pole
constexpr int across = 16;         // strips across a tunnel
constexpr double level_step = 0.1; // a curve of radius 2 m leaves such a chord by 0.6 mm
constexpr double slice_step = 0.05;
constexpr double chord = 0.001;
constexpr double hair = 1e-6;

/// Heights from the floor to a top, with those of `breaks` that lie between.
std::vector<double> levels(double top, std::vector<double> breaks) {
    breaks.push_back(0);
    breaks.push_back(top);
    std::sort(breaks.begin(), breaks.end());
    std::vector<double> all{0};
    for (const double next : breaks) {
        const double from = all.back();
        if (next <= from + hair || next > top)
            continue;
        const int parts = static_cast<int>(std::ceil((next - from) / level_step));
        for (int i = 1; i <= parts; ++i)
            all.push_back(i == parts ? next : from + (next - from) * i / parts);
    }
    return all;
}

/// Rings of points, as many in each, closed at both ends about `poles`.
Mesh stacked(const std::vector<std::vector<Vec3>>& rings, const Vec3& foot, const Vec3& top) {
    Mesh mesh;
    mesh.vertices.push_back(foot);
    const auto count = static_cast<std::uint32_t>(rings.front().size());
    for (std::size_t k = 0; k < rings.size(); ++k) {
        const auto first = static_cast<std::uint32_t>(mesh.vertices.size());
        mesh.vertices.insert(mesh.vertices.end(), rings[k].begin(), rings[k].end());
        for (std::uint32_t i = 0; i < count; ++i) {
            const std::uint32_t next = (i + 1) % count;
            if (k == 0)
                mesh.triangles.push_back({0, first + next, first + i});
            else {
                mesh.triangles.push_back({first - count + i, first - count + next, first + next});
                mesh.triangles.push_back({first - count + i, first + next, first + i});
            }
        }
    }
    const auto last = static_cast<std::uint32_t>(mesh.vertices.size());
    mesh.vertices.push_back(top);
    for (std::uint32_t i = 0; i < count; ++i)
        mesh.triangles.push_back({last, last - count + i, last - count + (i + 1) % count});
    return mesh;
}

/// Clear radius just under a height, so that the flat under a cap is still its top.
double radius_at(const DomeForm& dome, double plaster, double z, double top) {
    return clear_radius_at(dome, plaster, z >= top - hair ? top - hair : z);
}

/// A dome's part of an open plan. Two rooms meet in the line through the crossings of their
/// circles; on every ray from the pole that line ends the part, or the plaster where it is nearer.
Mesh dome_body(const DomeForm& dome, const std::vector<const DomeForm*>& others, double plaster,
               const std::vector<double>& all_levels) {
    const double top = clear_height_at(dome, plaster, 0);
    std::vector<std::vector<Vec3>> rings;
    for (const double z : levels(top, all_levels)) {
        const double own = radius_at(dome, plaster, z, top);
        std::vector<Vec3> ring;
        for (int i = 0; i < around; ++i) {
            const double angle = 2 * pi * i / around;
            const Vec2 way(std::cos(angle), std::sin(angle));
            double r = own;
            for (const DomeForm* other : others) {
                const double his = clear_radius_at(*other, plaster, z);
                const Vec2 off = other->at - dome.at;
                const double apart = off.norm();
                const double to_line = (apart * apart + own * own - his * his) / (2 * apart);
                if (const double along = way.dot(off) / apart; his > 0 && along > 0)
                    r = std::min(r, std::max(0.0, to_line) / along);
            }
            const Vec2 at = dome.at + r * way;
            ring.emplace_back(at.x(), at.y(), z);
        }
        rings.push_back(std::move(ring));
    }
    return stacked(rings, {dome.at.x(), dome.at.y(), 0}, {dome.at.x(), dome.at.y(), top});
}

/// Strips along the tunnel from the rooms of its domes to its end.
Mesh tunnel_body(const BuildingForm& building, const TunnelForm& tunnel, double plaster) {
    const double top = clear_height_at(tunnel, plaster, 0);
    const double end = tunnel_room_end(tunnel, plaster);
    const Vec2 axis = tunnel.axis(), left(-axis.y(), axis.x());
    std::vector<const DomeForm*> from, to;
    for (const DomeGroup& group : rooms_of(building)) {
        const auto holds = [&](const std::string& id) {
            return std::any_of(group.domes.begin(), group.domes.end(), [&](int i) {
                return building.domes[static_cast<std::size_t>(i)].id == id;
            });
        };
        for (const int i : group.domes) {
            const DomeForm& dome = building.domes[static_cast<std::size_t>(i)];
            if (holds(tunnel.from))
                from.push_back(&dome);
            if (!tunnel.to.empty() && holds(tunnel.to))
                to.push_back(&dome);
        }
    }
    std::vector<std::vector<Vec3>> rings;
    for (const double z : levels(top, {tunnel.springline})) {
        const double half = clear_width_at(tunnel, plaster, z >= top - hair ? top - hair : z) / 2;
        std::vector<Vec3> near, far;
        for (int k = 0; k <= across; ++k) {
            const double y = half * (2.0 * k / across - 1);
            // Where a line beside the axis leaves (or enters) a room.
            const auto end_in = [&](const DomeForm& dome, double sign) {
                const double r = room_radius(tunnel, dome, plaster, z);
                const Vec2 off = dome.at - tunnel.origin;
                const double beside = y - left.dot(off);
                return r > std::abs(beside)
                           ? axis.dot(off) + sign * std::sqrt(r * r - beside * beside)
                       : sign > 0 ? 0.0
                                  : end;
            };
            double starts = 0, ends = end;
            for (const DomeForm* dome : from)
                starts = std::max(starts, end_in(*dome, 1));
            for (const DomeForm* dome : to)
                ends = std::min(ends, end_in(*dome, -1));
            const auto point = [&](double x) {
                const Vec2 at = tunnel.origin + x * axis + y * left;
                return Vec3(at.x(), at.y(), z);
            };
            near.push_back(point(std::min(starts, ends)));
            far.push_back(point(ends));
        }
        std::vector<Vec3> ring = std::move(far); // anticlockwise from above
        ring.insert(ring.end(), near.rbegin(), near.rend());
        rings.push_back(std::move(ring));
    }
    const auto middle = [](const std::vector<Vec3>& ring) {
        return Vec3((ring[across / 2] + ring[across + 1 + across / 2]) / 2);
    };
    return stacked(rings, middle(rings.front()), middle(rings.back()));
}

std::vector<Mesh> slices(const BuildingForm& building, const DomeGroup& group,
                         const BuildingRoom& room, double plaster) {
    std::vector<Mesh> all;
    const int count = static_cast<int>(std::ceil(room.height / slice_step));
    const double deep = room.height / count;
    for (int i = 0; i < count; ++i) {
        const PlanExpression plan = room_plan(building, group, plaster, (i + 0.5) * deep);
        if (plan.shapes.empty())
            continue;
        Mesh slice = level_mesh(region_of(plan, exact_region), (i + 1) * deep, deep, chord);
        if (!slice.triangles.empty())
            all.push_back(std::move(slice));
    }
    return all;
}

} // namespace

std::vector<Mesh> room_bodies(const BuildingForm& building, const BuildingRoom& room,
                              double inside_plaster) {
    if (const TunnelForm* tunnel = find_tunnel(building, room.tunnel))
        return {tunnel_body(building, *tunnel, inside_plaster)};
    for (const DomeGroup& group : rooms_of(building)) {
        if (building.domes[static_cast<std::size_t>(group.domes.front())].id != room.domes.front())
            continue;
        std::vector<const DomeForm*> domes;
        std::vector<double> breaks;
        bool walls = false;
        for (const int i : group.domes) {
            const DomeForm& dome = building.domes[static_cast<std::size_t>(i)];
            domes.push_back(&dome);
            breaks.push_back(dome.springline);
            breaks.push_back(clear_height_at(dome, inside_plaster, 0));
            walls = walls || !walls_in_room(building, dome, inside_plaster).empty();
        }
        if (walls)
            return slices(building, group, room, inside_plaster);
        std::vector<Mesh> bodies;
        for (const DomeForm* dome : domes) {
            std::vector<const DomeForm*> others;
            std::copy_if(domes.begin(), domes.end(), std::back_inserter(others),
                         [&](const DomeForm* other) { return other != dome; });
            bodies.push_back(dome_body(*dome, others, inside_plaster, breaks));
        }
        return bodies;
    }
    return {};
}

} // namespace coilwright
