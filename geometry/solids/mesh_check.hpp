// Proof that a mesh is a solid, at the precision at which it will be written.
#pragma once

#include "geometry/solids/mesh.hpp"

#include <string>
#include <vector>

namespace coilwright {

struct MeshCheck {
    bool closed = false;             // every edge has exactly two triangles
    bool oriented = false;           // those two run along it in opposite directions
    bool outward = false;            // volume > 0
    bool manifold = false;           // one fan of triangles about each vertex
    bool self_intersecting = true;
    int components = 0;
    int degenerate_faces = 0;        // zero area after rounding
    double least_angle_degrees = 0;
    bool solid() const {
        return closed && oriented && outward && manifold && !self_intersecting &&
               degenerate_faces == 0;
    }
};

/// Checks the mesh after rounding coordinates to float32 when `as_float`, else as it stands.
/// Exact predicates (CGAL Polygon_mesh_processing), about 0.1 s for 20,000 triangles.
MeshCheck check_mesh(const Mesh& mesh, bool as_float);

} // namespace coilwright
