// The search for the heights at which a plan's topology changes.
#pragma once

#include "geometry/solids/wall_slabs.hpp"

#include <vector>

namespace coilwright {

struct SlabSearch {
    bool done = false;
    std::vector<WallSlab> slabs; // upward, without gaps; neighbours differ
    double failed_at = 0;        // if not done: the known height below the plan that none can tell
};

/// Between the first and the last of the known heights, ascending: samples just within each and at
/// most `step` metres apart, and the events between those that differ. Of the terms that are wanted
/// (see tagged_wall).
SlabSearch search_slabs(const WallFaces& faces, const std::vector<double>& known,
                        const std::vector<bool>& wanted, double step);

} // namespace coilwright
