#include "geometry/solids/wall_topology.hpp"

#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/plan_outline.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

CornerPlace circles(const WallFace& a, const WallFace& b, int branch, double z) {
    const double r = a.offset(z), s = b.offset(z);
    const Vec2 apart = b.centre - a.centre;
    const double d = apart.norm();
    if (d < 1e-12)
        return {a.centre, -std::abs(r - s)};
    const double along = (d * d + (r - s) * (r + s)) / (2 * d);
    const double height = std::sqrt(std::max(0.0, (r - along) * (r + along)));
    const Vec2 unit = apart / d;
    return {a.centre + along * unit + branch * height * turned_left(unit),
            std::min(r + s - d, d - std::abs(r - s))};
}

CornerPlace circle_line(const WallFace& circle, const WallFace& line, int branch, double z) {
    const double r = circle.offset(z);
    const double off = line.outward.dot(line.centre - circle.centre) + line.offset(z);
    const double half = std::sqrt(std::max(0.0, (r - off) * (r + off)));
    return {circle.centre + off * line.outward + branch * half * line.along(), r - std::abs(off)};
}

CornerPlace lines(const WallFace& a, const WallFace& b, double z) {
    const Vec2 on_a = a.centre + a.offset(z) * a.outward, along = a.along();
    const double turn = along.dot(b.outward);
    if (std::abs(turn) < 1e-9)
        return {on_a, -1};
    const double way = (b.outward.dot(b.centre - on_a) + b.offset(z)) / turn;
    return {on_a + way * along, 1};
}

int branch_of(const WallFace& a, const WallFace& b, const Vec2& at) {
    double side = 0;
    if (a.circle && b.circle)
        side = cross(b.centre - a.centre, at - a.centre);
    else if (a.circle || b.circle) {
        const WallFace &circle = a.circle ? a : b, &line = a.circle ? b : a;
        side = line.along().dot(at - circle.centre);
    } else {
        return 0;
    }
    return side < 0 ? -1 : 1;
}

int side_of_box(const Box& box, const BoundaryEdge& edge) {
    const Vec2 run = edge.to - edge.from, middle = (edge.from + edge.to) / 2 - box.origin;
    const double x = box.axis.dot(middle), y = cross(box.axis, middle);
    if (std::abs(run.dot(box.axis)) > std::abs(cross(box.axis, run)))
        return std::abs(y - box.low) < std::abs(y - box.high) ? 0 : 2;
    return std::abs(x - box.to) < std::abs(x - box.from) ? 1 : 3;
}

int patch_of_edge(const WallFaces& faces, const TaggedExpression& wall, const BoundaryEdge& edge,
                  double z) {
    const auto index = static_cast<std::size_t>(edge.shape);
    const Shape& shape = wall.plan.shapes[index];
    if (std::holds_alternative<Disc>(shape))
        return patch_of(faces.find(wall.tags[index], 0, z), edge.bulge < 0);
    const Box& box = std::get<Box>(shape);
    const int side = side_of_box(box, edge);
    const int face = faces.find(wall.tags[index], side, z);
    return patch_of(face, faces[face].along().dot(edge.to - edge.from) < 0);
}

struct PatchEdge {
    int patch;
    Vec2 from;
};

/// The loop's edges, pieces of one circle that follow each other joined.
std::vector<PatchEdge> patch_edges(const WallFaces& faces, const TaggedExpression& wall,
                                   const BoundaryLoop& loop, double z) {
    std::vector<PatchEdge> edges;
    for (const BoundaryEdge& edge : loop.edges) {
        const int patch = patch_of_edge(faces, wall, edge, z);
        if (edges.empty() || edges.back().patch != patch)
            edges.push_back({patch, edge.from});
    }
    if (edges.size() > 1 && edges.front().patch == edges.back().patch) {
        edges.front().from = edges.back().from;
        edges.pop_back();
    }
    return edges;
}

} // namespace

CornerPlace corner_at(const WallFaces& faces, const CornerKey& key, double z) {
    const WallFace &a = faces[key.a], &b = faces[key.b];
    if (a.circle && b.circle)
        return circles(a, b, key.branch, z);
    if (a.circle)
        return circle_line(a, b, key.branch, z);
    return b.circle ? circle_line(b, a, key.branch, z) : lines(a, b, z);
}

std::optional<WallTopology> wall_topology(const WallFaces& faces, double z,
                                          const std::vector<bool>& wanted) {
    const TaggedExpression wall = tagged_wall(faces.building(), faces.relations(), z, wanted);
    const Region region = region_of(wall.plan, exact_region);
    if (!region.decided)
        return std::nullopt;
    struct KeyedEdge {
        int patch;
        std::optional<CornerKey> from, to;
    };
    std::vector<KeyedEdge> keyed;
    WallTopology topology;
    for (const BoundaryLoop& loop : region.loops) {
        const std::vector<PatchEdge> edges = patch_edges(faces, wall, loop, z);
        if (edges.size() == 1) {
            keyed.push_back({edges[0].patch, {}, {}});
            continue;
        }
        const std::size_t first = keyed.size();
        for (std::size_t i = 0; i < edges.size(); ++i) {
            const int before = face_of(edges[(i + edges.size() - 1) % edges.size()].patch);
            const int after = face_of(edges[i].patch);
            const int a = std::min(before, after), b = std::max(before, after);
            const CornerKey key{a, b, branch_of(faces[a], faces[b], edges[i].from)};
            if (i > 0)
                keyed.back().to = key;
            keyed.push_back({edges[i].patch, key, {}});
            topology.corners.push_back(key);
        }
        keyed.back().to = keyed[first].from;
    }
    std::sort(topology.corners.begin(), topology.corners.end());
    if (std::adjacent_find(topology.corners.begin(), topology.corners.end()) !=
        topology.corners.end())
        return std::nullopt;
    const auto place_of = [&](const std::optional<CornerKey>& key) {
        return key ? static_cast<int>(
                         std::lower_bound(topology.corners.begin(), topology.corners.end(), *key) -
                         topology.corners.begin())
                   : -1;
    };
    for (const KeyedEdge& edge : keyed)
        topology.edges.push_back({edge.patch, place_of(edge.from), place_of(edge.to)});
    std::sort(topology.edges.begin(), topology.edges.end());
    return topology;
}

} // namespace coilwright
