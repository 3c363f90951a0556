#include "geometry/solids/wall_levels.hpp"

#include "geometry/base/bearing.hpp"
#include "geometry/plan/plan_outline.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>
#include <tuple>

namespace coilwright {

namespace {

/// An edge of one of the slabs at the level's height.
struct LevelEdge {
    int patch = 0;
    bool below = true;
    int from = -1, to = -1; // vertices
    PlanWay way;
};

struct Use {
    int patch;
    bool below, forward; // along the piece
};

struct Group {
    int from, to;
    PlanWay way;
    std::vector<Use> uses;
};

constexpr double cell = 0.05; // metres

using EdgeKey = std::tuple<int, CornerKey, CornerKey>;

class LevelMaker {
public:
    LevelMaker(const WallFaces& faces, const WallSlab* below, const WallSlab* above, double z)
        : faces_(faces), slabs_{below, above} {
        level_.z = z;
    }

    Level run() {
        for (const int side : {0, 1})
            place_corners(side);
        find_changes();
        attach_passing();
        for (const int side : {0, 1})
            for (const std::size_t edge : changed_[side])
                add_edge(side, slabs_[side]->topology.edges[edge]);
        cross_edges();
        group_pieces();
        for (const Group& group : groups_)
            add_piece(group);
        return std::move(level_);
    }

private:
    static std::size_t at(int index) { return static_cast<std::size_t>(index); }
    std::vector<int>& vertex_of(int side) { return side == 0 ? level_.below : level_.above; }

    void place_corners(int side) {
        if (!slabs_[side])
            return;
        for (const CornerKey& key : slabs_[side]->topology.corners)
            places_[side].push_back(corner_at(faces_, key, level_.z).at);
        vertex_of(side).assign(places_[side].size(), -1);
    }

    EdgeKey key_of(int side, const WallEdge& edge) const {
        const auto& corners = slabs_[side]->topology.corners;
        return edge.from < 0 ? EdgeKey{edge.patch, {}, {}}
                             : EdgeKey{edge.patch, corners[at(edge.from)], corners[at(edge.to)]};
    }

    /// Edges that only one slab has, and the vertices at their ends and where corners start or end.
    void find_changes() {
        std::vector<EdgeKey> keys[2];
        for (const int side : {0, 1}) {
            if (slabs_[side])
                for (const WallEdge& edge : slabs_[side]->topology.edges)
                    keys[side].push_back(key_of(side, edge));
            std::sort(keys[side].begin(), keys[side].end());
        }
        for (const int side : {0, 1}) {
            if (!slabs_[side])
                continue;
            const WallTopology& own = slabs_[side]->topology;
            const WallSlab* other = slabs_[1 - side];
            for (std::size_t i = 0; i < own.edges.size(); ++i)
                if (!std::binary_search(keys[1 - side].begin(), keys[1 - side].end(),
                                        key_of(side, own.edges[i]))) {
                    changed_[side].push_back(i);
                    for (const int corner : {own.edges[i].from, own.edges[i].to})
                        set_vertex(side, corner);
                }
            for (std::size_t i = 0; i < own.corners.size(); ++i)
                if (!other || !std::binary_search(other->topology.corners.begin(),
                                                  other->topology.corners.end(), own.corners[i]))
                    set_vertex(side, static_cast<int>(i));
        }
    }

    void set_vertex(int side, int corner) {
        if (corner >= 0)
            vertex_of(side)[at(corner)] = vertex_at(places_[side][at(corner)]);
    }

    /// Vertices by cells far wider than level_weld.
    using Cell = std::pair<long long, long long>;
    static Cell cell_of(const Vec2& place) {
        return {static_cast<long long>(std::floor(place.x() / cell)),
                static_cast<long long>(std::floor(place.y() / cell))};
    }
    int known_vertex(const Vec2& place) const {
        const Vec2 off = Vec2::Constant(level_weld);
        const Cell low = cell_of(place - off), high = cell_of(place + off);
        for (long long i = low.first; i <= high.first; ++i)
            for (long long j = low.second; j <= high.second; ++j) {
                const auto found = cells_.find({i, j});
                if (found == cells_.end())
                    continue;
                for (const int v : found->second)
                    if ((level_.vertices[at(v)] - place).squaredNorm() < level_weld * level_weld)
                        return v;
            }
        return -1;
    }
    int vertex_at(const Vec2& place) {
        int known = known_vertex(place);
        if (known < 0) {
            known = static_cast<int>(level_.vertices.size());
            level_.vertices.push_back(place);
            cells_[cell_of(place)].push_back(known);
        }
        return known;
    }

    /// A corner that goes on above stops at a vertex that it passes.
    void attach_passing() {
        for (const int side : {0, 1})
            for (std::size_t i = 0; i < places_[side].size(); ++i)
                if (vertex_of(side)[i] < 0)
                    vertex_of(side)[i] = known_vertex(places_[side][i]);
    }

    PlanWay way_of(int side, const WallEdge& edge, double z) const {
        const WallFace& face = faces_[face_of(edge.patch)];
        const auto corner = [&](int index) {
            return corner_at(faces_, slabs_[side]->topology.corners[at(index)], z).at;
        };
        if (!face.circle)
            return straight_way(corner(edge.from), corner(edge.to));
        const bool back = walked_back(edge.patch);
        if (edge.from < 0)
            return circle_way(face.centre, face.offset(z), back);
        return arc_way(face.centre, face.offset(z), corner(edge.from), corner(edge.to), back);
    }

    /// The way of an edge at the level; none where it has shrunk to nothing.
    std::optional<PlanWay> level_way(int side, const WallEdge& edge) const {
        PlanWay way = way_of(side, edge, level_.z);
        if (edge.from < 0)
            return way;
        const Vec2 apart = places_[side][at(edge.to)] - places_[side][at(edge.from)];
        if (apart.norm() > 2 * level_weld)
            return way;
        // Shrunk, or grown to a whole circle: as it is a little off the level.
        const WallSlab& slab = *slabs_[side];
        const double off = 1e-3 * (slab.high - slab.low);
        const PlanWay beside = way_of(side, edge, level_.z + (side == 0 ? -off : off));
        if (!beside.circle || std::abs(beside.sweep) < pi)
            return way.length() < 4 * level_weld ? std::optional(way) : std::nullopt;
        way.sweep = way.sweep < 0 ? -2 * pi : 2 * pi;
        return way;
    }

    void add_edge(int side, const WallEdge& edge) {
        const std::optional<PlanWay> way = level_way(side, edge);
        if (!way)
            return;
        LevelEdge placed{edge.patch, side == 0, -1, -1, *way};
        if (edge.from >= 0) {
            placed.from = vertex_of(side)[at(edge.from)];
            placed.to = vertex_of(side)[at(edge.to)];
        }
        const bool whole = way->circle && std::abs(way->sweep) > 2 * pi - 1e-9;
        if (placed.from != placed.to || whole)
            edges_.push_back(placed);
    }

    /// Adds the vertices in which edges of the two slabs cross.
    void cross_edges() {
        std::vector<PlanBounds> bounds;
        for (const LevelEdge& edge : edges_)
            bounds.push_back(bounds_of(edge.way, 2 * level_weld));
        for (const auto& [i, j] : meeting_pairs(bounds)) {
            const LevelEdge &a = edges_[at(i)], &b = edges_[at(j)];
            if (a.below == b.below)
                continue;
            for (const Vec2& place : crossings(a.way, b.way))
                if (lies_on(a.way, place, level_weld) && lies_on(b.way, place, level_weld))
                    vertex_at(place);
        }
    }

    void group_pieces() {
        std::vector<int> by_east(level_.vertices.size());
        std::iota(by_east.begin(), by_east.end(), 0);
        const auto east = [&](int v) { return level_.vertices[at(v)].x(); };
        std::sort(by_east.begin(), by_east.end(), [&](int a, int b) { return east(a) < east(b); });
        for (const LevelEdge& edge : edges_) {
            const PlanBounds bounds = bounds_of(edge.way, 2 * level_weld);
            std::vector<std::pair<double, int>> on;
            for (auto v = std::lower_bound(by_east.begin(), by_east.end(), bounds.low.x(),
                                           [&](int a, double x) { return east(a) < x; });
                 v != by_east.end() && east(*v) <= bounds.high.x(); ++v)
                if (*v != edge.from && *v != edge.to && bounds.holds(level_.vertices[at(*v)]) &&
                    lies_on(edge.way, level_.vertices[at(*v)], level_weld))
                    on.emplace_back(share_of(edge.way, level_.vertices[at(*v)]), *v);
            std::sort(on.begin(), on.end());
            if (edge.from >= 0) {
                on.insert(on.begin(), {0.0, edge.from});
                on.emplace_back(1.0, edge.to);
            } else if (!on.empty()) {
                on.emplace_back(on.front().first + 1, on.front().second);
            }
            if (on.empty())
                add_use(edge, -1, -1, edge.way);
            for (std::size_t i = 1; i < on.size(); ++i)
                add_use(edge, on[i - 1].second, on[i].second,
                        part_of(edge.way, on[i - 1].first, on[i].first));
        }
    }

    void add_use(const LevelEdge& edge, int from, int to, PlanWay way) {
        bool forward = from < to || (from == to && way.sweep > 0);
        if (!forward) {
            std::swap(from, to);
            way = reversed(way);
        }
        const Vec2 middle = way.at(0.5);
        std::vector<std::size_t>& known = groups_between_[{from, to}];
        for (const std::size_t index : known)
            if (same_place(groups_[index], way, middle)) {
                groups_[index].uses.push_back({edge.patch, edge.below, forward});
                return;
            }
        known.push_back(groups_.size());
        groups_.push_back({from, to, way, {{edge.patch, edge.below, forward}}});
    }

    static bool same_place(const Group& group, const PlanWay& way, const Vec2& middle) {
        if (group.from < 0)
            return (group.way.centre - way.centre).norm() < level_weld &&
                   std::abs(group.way.radius - way.radius) < level_weld;
        return (group.way.at(0.5) - middle).norm() < 2 * level_weld;
    }

    void add_piece(const Group& group) {
        LevelPiece piece{group.from, group.to, group.way, {}, false, false};
        int net[2] = {0, 0};
        for (const Use& use : group.uses) {
            net[use.below ? 0 : 1] += use.forward ? 1 : -1;
            const auto known = std::find(piece.patches.begin(), piece.patches.end(), use.patch);
            if (known == piece.patches.end())
                piece.patches.push_back(use.patch);
            else
                piece.patches.erase(known); // the face runs on through the level
        }
        if (piece.patches.empty())
            return;
        bool left[2], right[2];
        for (const int side : {0, 1}) {
            left[side] = net[side] > 0;
            right[side] = net[side] < 0;
            if (net[side] == 0)
                left[side] = right[side] = is_wall(side, beside(group.way));
        }
        const auto top = [&](const bool* in) { return in[0] && !in[1]; };
        const auto under = [&](const bool* in) { return in[1] && !in[0]; };
        piece.bounds_top = top(left) != top(right);
        piece.bounds_under = under(left) != under(right);
        const bool in_a_face = (top(left) && top(right)) || (under(left) && under(right));
        const std::size_t faces =
            piece.patches.size() + (piece.bounds_top ? 1 : 0) + (piece.bounds_under ? 1 : 0);
        if ((in_a_face || faces != 2) && !level_.fault) {
            level_.fault = faces % 2 == 0 ? ShapeFault::touching : ShapeFault::open_boundary;
            level_.first = faces_[face_of(piece.patches.front())].element;
            level_.second = faces_[face_of(piece.patches.back())].element;
            // What else ends there.
            for (const LevelEdge& edge : edges_)
                if (level_.second == level_.first &&
                    (lies_near(edge.way, group.way.at(0)) || lies_near(edge.way, group.way.at(1))))
                    level_.second = faces_[face_of(edge.patch)].element;
        }
        level_.pieces.push_back(std::move(piece));
    }

    static bool lies_near(const PlanWay& way, const Vec2& place) {
        return lies_on(way, place, level_weld) ||
               std::min((way.at(0) - place).norm(), (way.at(1) - place).norm()) < 2 * level_weld;
    }

    static Vec2 beside(const PlanWay& way) {
        const Vec2 ahead = way.at(0.5 + 1e-4) - way.at(0.5 - 1e-4);
        const double off = std::min(1e-4, 0.02 * way.length());
        return way.at(0.5) + off * turned_left(ahead.normalized());
    }

    bool is_wall(int side, const Vec2& place) {
        if (!slabs_[side])
            return false;
        if (!boundary_[side]) {
            std::vector<PlanWay> ways;
            for (const WallEdge& edge : slabs_[side]->topology.edges)
                if (const auto way = level_way(side, edge))
                    ways.push_back(*way);
            boundary_[side].emplace(std::move(ways));
        }
        return boundary_[side]->holds(place);
    }

    const WallFaces& faces_;
    const WallSlab* slabs_[2];
    Level level_;
    std::vector<Vec2> places_[2];
    std::vector<std::size_t> changed_[2];
    std::vector<LevelEdge> edges_;
    std::map<Cell, std::vector<int>> cells_;
    std::vector<Group> groups_;
    std::map<std::pair<int, int>, std::vector<std::size_t>> groups_between_; // by their ends
    std::optional<WayIndex> boundary_[2];
};

} // namespace

Level make_level(const WallFaces& faces, const WallSlab* below, const WallSlab* above, double z) {
    return LevelMaker(faces, below, above, z).run();
}

} // namespace coilwright
