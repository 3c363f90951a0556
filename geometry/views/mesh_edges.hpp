// What a mesh looks like from any side: the normals of the round surfaces that its facets stand
// for, and the edges at which facets meet sharply.
#pragma once

#include "geometry/solids/mesh.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace coilwright {

/// Facets that meet at a flatter angle (30 degrees) are one round surface: its cosine.
inline constexpr double crease_cosine = 0.8660254;

/// Unit normals of the facets (0 of a facet without area), and those of the round surface at each
/// corner of each facet: the mean by area of the facets about the corner that meet it flatly.
struct SmoothNormals {
    std::vector<Vec3> facets;
    std::vector<std::array<Vec3, 3>> corners;
};
SmoothNormals smooth_normals(const Mesh& mesh);

/// A side on which two facets meet sharply: from corner `k` of `facet` to its next.
struct Crease {
    std::uint32_t facet = 0, k = 0;
    std::uint32_t other = 0; // the facet beyond
};

/// A mesh with its normals and, in the mesh's order, its creases. A box: 12 facets, 12 creases.
struct EdgedMesh {
    Mesh mesh;
    SmoothNormals normals;
    std::vector<Crease> creases;
};
EdgedMesh with_edges(Mesh mesh);

} // namespace coilwright
