// What happens at a height at which the wall's plan changes: which pieces of it the faces above or
// below end on, and the horizontal faces that close the jumps.
#pragma once

#include "geometry/solids/plan_ways.hpp"
#include "geometry/solids/wall_slabs.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// A piece of the boundary of the wall just below or just above the level, or of both.
struct LevelPiece {
    int from = -1, to = -1; // places in Level::vertices; -1: a whole circle
    PlanWay way;
    std::vector<int> patches;  // whose boundary it is
    bool bounds_top = false;   // of wall that nothing stands on
    bool bounds_under = false; // of wall that stands on nothing
};

struct Level {
    double z = 0;
    std::vector<Vec2> vertices;
    std::vector<LevelPiece> pieces;
    // Per corner of the slab below and above: its vertex here, -1 where it passes through.
    std::vector<int> below, above;
    std::optional<ShapeFault> fault;
    std::string first, second; // elements at fault
};

/// Places within this of each other are one vertex, metres.
inline constexpr double level_weld = 5e-6;

/// The level between two slabs, or below the first or above the last (the other null). What both
/// slabs have in common is left out.
Level make_level(const WallFaces& faces, const WallSlab* below, const WallSlab* above, double z);

} // namespace coilwright
