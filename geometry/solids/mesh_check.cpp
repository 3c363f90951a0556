#include "geometry/solids/mesh_check.hpp"

#include "geometry/base/bearing.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <limits>

namespace coilwright {

namespace {

/// Sets of things that belong together, by path halving.
class Clusters {
public:
    explicit Clusters(std::uint32_t count) {
        parent_.reserve(count);
        for (std::uint32_t i = 0; i < count; ++i)
            parent_.push_back(i);
    }
    std::uint32_t root(std::uint32_t i) {
        while (parent_[i] != i)
            i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    void join(std::uint32_t a, std::uint32_t b) { parent_[root(a)] = root(b); }

private:
    std::vector<std::uint32_t> parent_;
};

/// One side of a triangle: corner `3 * triangle + k` is where it starts.
struct EdgeUse {
    std::uint32_t low, high; // vertices
    std::uint32_t corner;
    bool upward; // runs from low to high
    bool operator<(const EdgeUse& other) const {
        if (low != other.low)
            return low < other.low;
        return high != other.high ? high < other.high : corner < other.corner;
    }
};

std::vector<EdgeUse> edge_uses(const Mesh& mesh) {
    std::vector<EdgeUse> uses;
    uses.reserve(mesh.triangles.size() * 3);
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t)
        for (std::uint32_t k = 0; k < 3; ++k) {
            const std::uint32_t a = mesh.triangles[t][k];
            const std::uint32_t b = mesh.triangles[t][(k + 1) % 3];
            uses.push_back({std::min(a, b), std::max(a, b), 3 * t + k, a < b});
        }
    std::sort(uses.begin(), uses.end());
    return uses;
}

std::uint32_t corner_after(std::uint32_t corner) {
    return corner % 3 == 2 ? corner - 2 : corner + 1;
}

/// Closed, oriented, manifold and the count of components, from the sorted table of edges.
void check_edges(const Mesh& mesh, MeshCheck& check) {
    const std::vector<EdgeUse> uses = edge_uses(mesh);
    const auto triangles = static_cast<std::uint32_t>(mesh.triangles.size());
    Clusters corners(triangles * 3);
    Clusters faces(triangles);
    check.closed = check.oriented = !uses.empty();
    for (std::size_t i = 0; i < uses.size();) {
        std::size_t end = i + 1;
        while (end < uses.size() && uses[end].low == uses[i].low && uses[end].high == uses[i].high)
            ++end;
        if (end - i != 2 || uses[i].low == uses[i].high) {
            check.closed = false;
            check.oriented = false;
        } else {
            const EdgeUse &s = uses[i], &t = uses[i + 1];
            check.oriented &= s.upward != t.upward;
            // Where the two run opposite ways, one starts at the vertex at which the other ends.
            const std::uint32_t s_end = corner_after(s.corner), t_end = corner_after(t.corner);
            corners.join(s.corner, s.upward == t.upward ? t.corner : t_end);
            corners.join(s_end, s.upward == t.upward ? t_end : t.corner);
            faces.join(s.corner / 3, t.corner / 3);
        }
        i = end;
    }
    std::vector<int> fans(mesh.vertices.size(), 0);
    for (std::uint32_t c = 0; c < triangles * 3; ++c)
        if (corners.root(c) == c)
            ++fans[mesh.triangles[c / 3][c % 3]];
    check.manifold =
        check.closed && std::all_of(fans.begin(), fans.end(), [](int n) { return n == 1; });
    for (std::uint32_t t = 0; t < triangles; ++t)
        check.components += faces.root(t) == t;
}

double least_angle(const Mesh& mesh) {
    double largest_cosine = -1;
    for (const auto& corner : mesh.triangles)
        for (int k = 0; k < 3; ++k) {
            const Vec3& at = mesh.vertices[corner[k]];
            const Vec3 u = mesh.vertices[corner[(k + 1) % 3]] - at;
            const Vec3 v = mesh.vertices[corner[(k + 2) % 3]] - at;
            const double lengths = std::sqrt(u.squaredNorm() * v.squaredNorm());
            largest_cosine = std::max(largest_cosine, lengths > 0 ? u.dot(v) / lengths : 1.0);
        }
    return std::acos(std::clamp(largest_cosine, -1.0, 1.0)) / radians_per_degree;
}

bool readable(const Mesh& mesh) {
    for (const auto& corner : mesh.triangles)
        for (const std::uint32_t v : corner)
            if (v >= mesh.vertices.size())
                return false;
    return std::all_of(mesh.vertices.begin(), mesh.vertices.end(),
                       [](const Vec3& v) { return v.allFinite(); });
}

} // namespace

Mesh rounded_to_float(const Mesh& mesh) {
    Mesh rounded = mesh;
    // Number by number: of a chain of Eigen casts GCC 12 at -O2 leaves the rounding out.
    for (Vec3& vertex : rounded.vertices)
        for (double& coordinate : vertex) {
            const float single = static_cast<float>(coordinate);
            coordinate = single;
        }
    return rounded;
}

MeshCheck check_mesh(const Mesh& mesh, bool as_float) {
    MeshCheck check;
    if (!readable(mesh) || mesh.triangles.empty())
        return check;
    if (as_float)
        return check_mesh(rounded_to_float(mesh), false);
    check_edges(mesh, check);
    check.outward = volume(mesh) > 0;
    check.degenerate_faces = static_cast<int>(flat_triangles(mesh).size());
    check.least_angle_degrees = least_angle(mesh);
    check.crossing = first_crossing(mesh);
    check.self_intersecting = check.crossing.has_value();
    return check;
}

} // namespace coilwright
