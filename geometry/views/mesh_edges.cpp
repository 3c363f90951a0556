#include "geometry/views/mesh_edges.hpp"

#include <Eigen/Geometry>

#include <algorithm>
#include <numeric>
#include <tuple>
#include <utility>

namespace coilwright {

SmoothNormals smooth_normals(const Mesh& mesh) {
    SmoothNormals normals;
    std::vector<Vec3> weighted;
    weighted.reserve(mesh.triangles.size());
    normals.facets.reserve(mesh.triangles.size());
    std::vector<std::size_t> first(mesh.vertices.size() + 1, 0); // of each vertex's facets
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i) {
        const auto& t = mesh.triangles[i];
        const Vec3 a = mesh.vertices[t[0]];
        const Vec3 normal = (mesh.vertices[t[1]] - a).cross(mesh.vertices[t[2]] - a);
        const double length = normal.norm();
        weighted.push_back(normal);
        normals.facets.push_back(length > 0 ? Vec3(normal / length) : Vec3(0, 0, 0));
        for (const std::uint32_t corner : t)
            ++first[corner + 1];
    }
    std::partial_sum(first.begin(), first.end(), first.begin());
    std::vector<std::uint32_t> around(3 * mesh.triangles.size());
    std::vector<std::size_t> next(first.begin(), first.end() - 1);
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i)
        for (const std::uint32_t corner : mesh.triangles[i])
            around[next[corner]++] = static_cast<std::uint32_t>(i);
    normals.corners.resize(mesh.triangles.size());
    for (std::size_t i = 0; i < mesh.triangles.size(); ++i)
        for (std::size_t k = 0; k < 3; ++k) {
            Vec3 sum(0, 0, 0);
            const std::uint32_t corner = mesh.triangles[i][k];
            for (std::size_t of = first[corner]; of < first[corner + 1]; ++of)
                if (normals.facets[around[of]].dot(normals.facets[i]) > crease_cosine)
                    sum += weighted[around[of]];
            const double length = sum.norm();
            normals.corners[i][k] = length > 0 ? Vec3(sum / length) : normals.facets[i];
        }
    return normals;
}

namespace {

std::vector<Crease> creases_of(const Mesh& mesh, const SmoothNormals& normals) {
    struct Side {
        std::uint32_t low, high; // vertices
        std::uint32_t facet, k;
    };
    std::vector<Side> sides;
    sides.reserve(3 * mesh.triangles.size());
    for (std::uint32_t i = 0; i < mesh.triangles.size(); ++i)
        for (std::uint32_t k = 0; k < 3; ++k) {
            const std::uint32_t a = mesh.triangles[i][k], b = mesh.triangles[i][(k + 1) % 3];
            sides.push_back({std::min(a, b), std::max(a, b), i, k});
        }
    std::sort(sides.begin(), sides.end(), [](const Side& a, const Side& b) {
        return std::tie(a.low, a.high, a.facet, a.k) < std::tie(b.low, b.high, b.facet, b.k);
    });
    std::vector<Crease> creases;
    for (std::size_t i = 0, first = 0; i < sides.size(); ++i) {
        if (sides[i].low != sides[first].low || sides[i].high != sides[first].high)
            first = i;
        if (i == first)
            continue;
        const Vec3& one = normals.facets[sides[first].facet];
        if (one.dot(normals.facets[sides[i].facet]) <= crease_cosine)
            creases.push_back({sides[i].facet, sides[i].k, sides[first].facet});
    }
    std::sort(creases.begin(), creases.end(), [](const Crease& a, const Crease& b) {
        return std::tie(a.facet, a.k) < std::tie(b.facet, b.k);
    });
    return creases;
}

} // namespace

EdgedMesh with_edges(Mesh mesh) {
    EdgedMesh edged;
    edged.normals = smooth_normals(mesh);
    edged.creases = creases_of(mesh, edged.normals);
    edged.mesh = std::move(mesh);
    return edged;
}

} // namespace coilwright
