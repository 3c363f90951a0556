#include "geometry/views/seen_edges.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

namespace coilwright {
namespace {

/// A piece of an edge in the view's frame, and which way is off the body there.
struct EdgePiece {
    Vec3 from, to;
    Vec3 off_from, off_to; // in the view's frame, unit
};

void add_creases(std::vector<EdgePiece>& pieces, const EdgedMesh& edged, const SightFrame& frame) {
    const Mesh& mesh = edged.mesh;
    for (const Crease& crease : edged.creases) {
        const Vec3& n1 = edged.normals.facets[crease.other];
        const Vec3& n2 = edged.normals.facets[crease.facet];
        if (n1.dot(frame.toward) <= 1e-9 && n2.dot(frame.toward) <= 1e-9)
            continue;
        Vec3 off = n1 + n2;
        off = off.norm() > 1e-6 ? Vec3(off.normalized()) : n1;
        const Vec3 seen = frame.of(off);
        const auto& corners = mesh.triangles[crease.facet];
        pieces.push_back({frame.of(mesh.vertices[corners[crease.k]]),
                          frame.of(mesh.vertices[corners[(crease.k + 1) % 3]]), seen, seen});
    }
}

/// Where the round surface turns away: normals across it are square to the line of sight.
void add_outlines(std::vector<EdgePiece>& pieces, const EdgedMesh& edged, const SightFrame& frame) {
    const Mesh& mesh = edged.mesh;
    const SmoothNormals& normals = edged.normals;
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
        std::array<double, 3> facing{};
        for (std::size_t k = 0; k < 3; ++k)
            facing[k] = normals.corners[i][k].dot(frame.toward);
        const auto [least, most] = std::minmax_element(facing.begin(), facing.end());
        if (*least >= 0 || *most < 0 || *most - *least < 1e-6)
            continue;
        std::array<Vec3, 2> ends, offs;
        std::size_t count = 0;
        for (std::size_t k = 0; k < 3; ++k) {
            // From the lower index to the higher, so that neighbours find the same point.
            std::size_t p = k, q = (k + 1) % 3;
            if (mesh.triangles[i][p] > mesh.triangles[i][q])
                std::swap(p, q);
            if ((facing[p] >= 0) == (facing[q] >= 0) || count == 2)
                continue;
            const double part = facing[p] / (facing[p] - facing[q]);
            const Vec3 &a = mesh.vertices[mesh.triangles[i][p]],
                       &b = mesh.vertices[mesh.triangles[i][q]];
            ends[count] = frame.of(a + part * (b - a));
            const Vec3 off = normals.corners[i][p] * (1 - part) + normals.corners[i][q] * part;
            offs[count] = frame.of(off.normalized());
            ++count;
        }
        if (count == 2)
            pieces.push_back({ends[0], ends[1], offs[0], offs[1]});
    }
}

/// Cuts a piece off at the near plane; false where nothing is left.
bool clip_near(EdgePiece& piece, double near) {
    const double a = near - piece.from.z(), b = near - piece.to.z();
    if (a <= 0 && b <= 0)
        return false;
    if (a < 0)
        piece.from += (piece.to - piece.from) * (a / (a - b));
    else if (b < 0)
        piece.to += (piece.from - piece.to) * (b / (b - a));
    return true;
}

/// Joins pieces end to end into lines.
class Joiner {
public:
    void add(const Vec3& from, const Vec3& to) {
        if ((to.head<2>() - from.head<2>()).norm() < 1e-7)
            return;
        const std::size_t index = ends_.size();
        ends_.push_back({from, to});
        at_[key(from)].push_back(index);
        at_[key(to)].push_back(index);
    }
    std::vector<SeenLine> lines() {
        std::vector<SeenLine> made;
        std::vector<bool> used(ends_.size(), false);
        for (std::size_t i = 0; i < ends_.size(); ++i) {
            if (used[i])
                continue;
            used[i] = true;
            std::vector<Vec3> chain{ends_[i][0], ends_[i][1]};
            extend(chain, used);
            std::reverse(chain.begin(), chain.end());
            extend(chain, used);
            SeenLine line;
            for (const Vec3& point : chain) {
                line.points.emplace_back(point.head<2>());
                line.depths.push_back(point.z());
            }
            made.push_back(std::move(line));
        }
        return made;
    }

private:
    using Key = std::array<long long, 3>;
    static Key key(const Vec3& p) {
        return {std::llround(p.x() * 1e6), std::llround(p.y() * 1e6), std::llround(p.z() * 1e6)};
    }
    void extend(std::vector<Vec3>& chain, std::vector<bool>& used) {
        for (;;) {
            const auto found = at_.find(key(chain.back()));
            std::size_t next = ends_.size();
            int open = 0;
            for (const std::size_t index : found->second)
                if (!used[index]) {
                    next = index;
                    ++open;
                }
            if (open != 1 || found->second.size() > 2)
                return; // an end, or a fork: corners stay corners
            used[next] = true;
            const bool forward = key(ends_[next][0]) == key(chain.back());
            chain.push_back(ends_[next][forward ? 1 : 0]);
        }
    }
    std::vector<std::array<Vec3, 2>> ends_;
    std::map<Key, std::vector<std::size_t>> at_;
};

/// Drops points that lie within `slack` of the line between those kept (Douglas and Peucker 1973).
void thin(SeenLine& line, double slack) {
    std::vector<bool> keep(line.points.size(), false);
    keep.front() = keep.back() = true;
    std::vector<std::pair<std::size_t, std::size_t>> open{{0, line.points.size() - 1}};
    while (!open.empty()) {
        const auto [a, b] = open.back();
        open.pop_back();
        const Vec2 chord = line.points[b] - line.points[a];
        const double length = chord.norm();
        double most = slack;
        std::size_t far = 0;
        for (std::size_t i = a + 1; i < b; ++i) {
            const Vec2 d = line.points[i] - line.points[a];
            const double off =
                length > 1e-9 ? std::abs(chord.x() * d.y() - chord.y() * d.x()) / length : d.norm();
            if (off > most) {
                most = off;
                far = i;
            }
        }
        if (far > 0) {
            keep[far] = true;
            open.push_back({a, far});
            open.push_back({far, b});
        }
    }
    SeenLine kept;
    for (std::size_t i = 0; i < keep.size(); ++i)
        if (keep[i]) {
            kept.points.push_back(line.points[i]);
            kept.depths.push_back(line.depths[i]);
        }
    line = std::move(kept);
}

} // namespace

std::vector<SeenLine> seen_edges(const EdgedMesh& mesh, const SightBlock& block, double tolerance) {
    std::vector<EdgePiece> pieces;
    add_creases(pieces, mesh, block.frame());
    add_outlines(pieces, mesh, block.frame());
    Joiner joiner;
    // Tested a little off the body: facets bulge before their own edges by up to the tolerance.
    const double off = 2 * tolerance + 5e-4, clearance = 2 * tolerance + 1e-3;
    for (EdgePiece& piece : pieces) {
        if (!clip_near(piece, block.near()))
            continue;
        const auto at = [&](double part) {
            return Vec3(piece.from + part * (piece.to - piece.from));
        };
        const auto visible = [&](double part) {
            const Vec3 aside = piece.off_from + part * (piece.off_to - piece.off_from);
            return !block.hides(at(part) + off * aside, clearance);
        };
        constexpr double step = 0.01, end_within = 0.001; // m
        const double length = (piece.to - piece.from).norm();
        const int steps = std::max(1, static_cast<int>(std::ceil(length / step)));
        double start = 0;
        bool seen = visible(0.5 / steps);
        for (int i = 1; i < steps; ++i) {
            if (visible((i + 0.5) / steps) == seen)
                continue;
            double low = (i - 0.5) / steps, high = (i + 0.5) / steps;
            while ((high - low) * length > end_within)
                (visible((low + high) / 2) == seen ? low : high) = (low + high) / 2;
            if (seen)
                joiner.add(at(start), at(low));
            start = high;
            seen = !seen;
        }
        if (seen)
            joiner.add(at(start), piece.to);
    }
    std::vector<SeenLine> lines = joiner.lines();
    for (SeenLine& line : lines)
        thin(line, 0.0005);
    return lines;
}

} // namespace coilwright
