// Edges of solids as they are seen from afar: creases and the outlines of round surfaces, with what
// stands before them taken away.
#pragma once

#include "geometry/views/mesh_edges.hpp"
#include "geometry/views/sight_block.hpp"

#include <vector>

namespace coilwright {

/// A line in the view's frame (x right, y up), as seen. `depth` is that of its points.
struct SeenLine {
    std::vector<Vec2> points;
    std::vector<double> depths;
};

/// Visible edges of a closed mesh: its creases and the outlines of its round surfaces, less what is
/// hidden or nearer than the block's `near`. `block` is that of the mesh, `tolerance` the mesh's
/// own. Pieces are joined into lines; ends are found within 1 mm, gaps under 10 mm may be missed.
std::vector<SeenLine> seen_edges(const EdgedMesh& mesh, const SightBlock& block, double tolerance);

} // namespace coilwright
