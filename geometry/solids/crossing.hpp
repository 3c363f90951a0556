// Triangles of a mesh that cut through or touch one another where they should not.
#pragma once

#include "geometry/solids/mesh.hpp"

#include <cstdint>
#include <optional>
#include <utility>

namespace coilwright {

using TrianglePair = std::pair<std::uint32_t, std::uint32_t>;

/// The lowest pair of triangles that meet anywhere but in the vertices or the edge they share by
/// index; none if there is no such pair. Triangles without area are left out. Exact predicates on
/// the coordinates as they stand. Precondition: coordinates are finite, indices in range.
std::optional<TrianglePair> first_crossing(const Mesh& mesh);

/// Triangles whose three corners lie on one line, by an exact predicate.
std::vector<std::uint32_t> flat_triangles(const Mesh& mesh);

} // namespace coilwright
