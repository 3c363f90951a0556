// Proof that a mesh is a solid, at the precision at which it will be written.
#pragma once

#include "geometry/solids/crossing.hpp"
#include "geometry/solids/mesh.hpp"

#include <string>
#include <vector>

namespace coilwright {

struct MeshCheck {
    bool closed = false;   // every edge has exactly two triangles
    bool oriented = false; // those two run along it in opposite directions
    bool outward = false;  // volume > 0
    bool manifold = false; // closed, and one fan of triangles about each vertex
    bool self_intersecting = true;
    std::optional<TrianglePair> crossing; // the lowest pair of triangles that do
    int components = 0;
    int degenerate_faces = 0; // zero area after rounding
    double least_angle_degrees = 0;
    bool solid() const {
        return closed && oriented && outward && manifold && !self_intersecting &&
               degenerate_faces == 0;
    }
};

/// Checks the mesh after rounding coordinates to float32 when `as_float`, else as it stands. By
/// exact predicates; about 20 ms for 20,000 triangles. An empty mesh, an index out of range or a
/// coordinate that is not finite gives a check of which nothing holds.
MeshCheck check_mesh(const Mesh& mesh, bool as_float);

/// The mesh as a reader of a file in single precision will have it.
Mesh rounded_to_float(const Mesh& mesh);

} // namespace coilwright
