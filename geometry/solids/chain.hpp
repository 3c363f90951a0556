// Curves on a mesh that is being built, as the boundary of a face.
#pragma once

#include "geometry/base/vec.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// A curve as vertices of the mesh that is being built. What two surfaces share, they share by
/// index, and no one divides an edge of it.
struct Chain {
    std::vector<std::uint32_t> vertices;
    bool closed = false; // the last vertex is joined to the first
    std::string element; // what makes the curve: "opening.door", for messages
};

/// Two vertices that an edge joins.
using ChainEdge = std::pair<std::uint32_t, std::uint32_t>;

/// The edges along a chain, in its direction.
std::vector<ChainEdge> edges_of(const Chain& chain);

/// The edges of several chains, lower vertex first, sorted.
std::vector<ChainEdge> sorted_edges(const std::vector<Chain>& chains);

/// A vertex in which an odd number of edges meet: they do not make closed loops.
std::optional<std::uint32_t> loose_end(const std::vector<ChainEdge>& edges);

/// Element of the first chain that holds a vertex, or of the first but `own` that an edge crosses
/// in the plane that `flat` gives; for messages. Empty if there is none.
std::string element_at(const std::vector<Chain>& chains, std::uint32_t vertex);
std::string element_across(const std::vector<Chain>& chains, const Chain& own, ChainEdge edge,
                           const std::function<Vec2(std::uint32_t)>& flat);

} // namespace coilwright
