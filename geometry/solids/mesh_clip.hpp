// What of a mesh lies above a level.
#pragma once

#include "geometry/solids/mesh.hpp"

namespace coilwright {

/// The part of a mesh at and above a height, cut open there; triangles without an area and vertices
/// without a triangle are left out, equal vertices are one.
Mesh clipped_below(const Mesh& mesh, double z);

} // namespace coilwright
