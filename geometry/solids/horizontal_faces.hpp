// The horizontal faces of a level, each by itself.
#pragma once

#include "geometry/solids/wall_levels.hpp"

#include <vector>

namespace coilwright {

/// The pieces of a level that bound one face: an outer loop, and holes in it.
struct HorizontalPieces {
    bool under = false;
    std::vector<std::size_t> pieces; // places in Level::pieces, ascending
};

/// Tops first, then undersides, by their lowest piece.
std::vector<HorizontalPieces> horizontal_faces(const Level& level);

} // namespace coilwright
