// Triangulating one surface between boundary curves that it shares with its neighbours.
#pragma once

#include "geometry/solids/chain.hpp"
#include "geometry/solids/mesh.hpp"
#include "geometry/solids/shape_fault.hpp"
#include "geometry/solids/surface.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// A part of a surface. Boundary chains, whole, in any order and direction, make closed loops;
/// inside and outside are told by their nesting, so holes and separate pieces need no marking.
struct Patch {
    const Surface* surface = nullptr;
    std::vector<Chain> boundary;
    std::vector<Chain> creases; // curves inside the patch that facets must not straddle
    bool flipped = false;       // the solid's outside is the surface's back
};

/// Why a patch cannot be meshed, and the elements whose curves are at fault.
struct PatchFault {
    ShapeFault kind = ShapeFault::crossing;
    std::string first, second;
};

/// Appends the patch's triangles, and the vertices inside it, to the mesh that holds the chains'
/// vertices: a constrained Delaunay triangulation in the surface's plane, filled at the surface's
/// spacing (finer beside short edges), then refined until facets lie within the tolerance and, as
/// far as the undivided boundary lets them, have no angle under 25 degrees. With a fault the mesh
/// is left as it was. The same input gives the same triangles in the same order.
std::optional<PatchFault> mesh_patch(const Patch& patch, double tolerance, Mesh& mesh);

} // namespace coilwright
