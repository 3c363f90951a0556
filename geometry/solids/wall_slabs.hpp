// The heights at which the wall's plan changes its topology, and what it is between them.
#pragma once

#include "geometry/solids/shape_fault.hpp"
#include "geometry/solids/wall_topology.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// The wall between two events.
struct WallSlab {
    double low = 0, high = 0;
    WallTopology topology;
};

struct WallSlabs {
    std::vector<WallSlab> slabs; // upward, without gaps
    std::optional<ShapeFault> fault;
    std::string first, second; // elements at fault
};

/// Events are the known heights of the faces, those within height_tie being one, and such as are
/// found where the topology differs between two samples: tangencies and places where three curves
/// meet, to the last digits. Samples stand at most `step` metres apart. Neighbours with the same
/// topology are one slab.
WallSlabs find_slabs(const WallFaces& faces, double step = 0.2);

} // namespace coilwright
