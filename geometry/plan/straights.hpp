// Straight runs of tubes: walls and crowns of tunnels, end walls, buttresses.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <span>
#include <vector>

namespace coilwright {

/// The straights of course n. Bond: on odd courses tunnel and buttress tubes butt against the
/// ring's outside face and an end wall stands between the tunnel's walls; on even courses they run
/// in to the ring's inside face and the end wall runs across. Below the floor and where the ring
/// leans they butt on every course. `below`: the straights of course n - 1, for the joints.
std::vector<Straight> lay_straights(const Design& design, const BuildingForm& building,
                                    const WallRelations& relations, int n,
                                    std::span<const Straight> below);

} // namespace coilwright
