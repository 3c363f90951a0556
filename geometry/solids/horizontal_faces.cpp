#include "geometry/solids/horizontal_faces.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace coilwright {

namespace {

/// Pieces that hang together by their ends.
struct Group {
    std::vector<std::size_t> pieces;
    std::vector<PlanWay> outline; // of the pieces, each way round as it may be
    PlanBounds bounds;
    int parent = -1; // the group that it lies in
    int depth = 0;
};

std::vector<Group> groups_of(const Level& level, bool under) {
    std::vector<int> root(level.vertices.size());
    for (std::size_t v = 0; v < root.size(); ++v)
        root[v] = static_cast<int>(v);
    const auto find = [&](int v) {
        while (root[static_cast<std::size_t>(v)] != v)
            v = root[static_cast<std::size_t>(v)];
        return v;
    };
    const auto bounds = [&](const LevelPiece& piece) {
        return under ? piece.bounds_under : piece.bounds_top;
    };
    for (const LevelPiece& piece : level.pieces)
        if (bounds(piece) && piece.from >= 0) {
            const int a = find(piece.from), b = find(piece.to);
            root[static_cast<std::size_t>(std::max(a, b))] = std::min(a, b);
        }
    std::vector<Group> groups;
    std::map<int, std::size_t> by_root;
    for (std::size_t i = 0; i < level.pieces.size(); ++i) {
        const LevelPiece& piece = level.pieces[i];
        if (!bounds(piece))
            continue;
        std::size_t group = groups.size();
        if (piece.from >= 0)
            group = by_root.try_emplace(find(piece.from), group).first->second;
        if (group == groups.size())
            groups.emplace_back();
        groups[group].pieces.push_back(i);
        groups[group].outline.push_back(piece.way);
        const PlanBounds more = bounds_of(piece.way, 0);
        groups[group].bounds.low = groups[group].bounds.low.cwiseMin(more.low);
        groups[group].bounds.high = groups[group].bounds.high.cwiseMax(more.high);
    }
    return groups;
}

/// A point of the outline, off any axis.
Vec2 inner_point(const Group& group) {
    return group.outline.front().at(0.3719);
}

/// Whether a ray to the east from a point crosses the outline an odd number of times.
bool holds(const Group& group, const Vec2& point) {
    if (!group.bounds.holds(point))
        return false;
    int crossed = 0;
    for (const PlanWay& way : group.outline) {
        // Of an arc, between the places where it turns up or down.
        const int parts = way.circle ? std::max(1, static_cast<int>(std::abs(way.sweep) * 8)) : 1;
        for (int i = 0; i < parts; ++i) {
            const Vec2 a = way.at(static_cast<double>(i) / parts);
            const Vec2 b = way.at(static_cast<double>(i + 1) / parts);
            if ((a.y() > point.y()) == (b.y() > point.y()))
                continue;
            const double x = a.x() + (point.y() - a.y()) / (b.y() - a.y()) * (b.x() - a.x());
            crossed += x > point.x();
        }
    }
    return crossed % 2 != 0;
}

} // namespace

std::vector<HorizontalPieces> horizontal_faces(const Level& level) {
    std::vector<HorizontalPieces> faces;
    for (const bool under : {false, true}) {
        std::vector<Group> groups = groups_of(level, under);
        // Each group's depth, and the deepest of those around it.
        for (Group& group : groups)
            for (const Group& other : groups)
                group.depth += &other != &group && holds(other, inner_point(group));
        for (Group& group : groups)
            for (std::size_t i = 0; group.depth % 2 != 0 && i < groups.size(); ++i)
                if (groups[i].depth + 1 == group.depth && holds(groups[i], inner_point(group)))
                    group.parent = static_cast<int>(i);
        for (std::size_t i = 0; i < groups.size(); ++i) {
            if (groups[i].parent >= 0)
                continue;
            HorizontalPieces face{under, groups[i].pieces};
            for (const Group& hole : groups)
                if (hole.parent == static_cast<int>(i))
                    face.pieces.insert(face.pieces.end(), hole.pieces.begin(), hole.pieces.end());
            std::sort(face.pieces.begin(), face.pieces.end());
            faces.push_back(std::move(face));
        }
    }
    return faces;
}

} // namespace coilwright
