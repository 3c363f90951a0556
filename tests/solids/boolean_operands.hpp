// A building as a row of Booleans on closed meshes, for whatever library can do them: the judges of
// the shell, and what its speed is compared with.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/mesh.hpp"

#include <vector>

namespace coilwright {

/// `body` less each of `less`, then added to what stands, or taken away from it. The first of a row
/// adds. Bodies are closed and outward, their coordinates on a grid of 2^-20 m.
struct BooleanStep {
    bool adds = true;
    Mesh body;
    std::vector<Mesh> less;
};

/// The wall of a dome in its own frame (x along the datum): the outer solid of revolution less the
/// room less one prism an opening, with `around` edges to a circle.
std::vector<BooleanStep> wall_steps(const DomeForm& form, const std::vector<OpeningForm>& openings,
                                    int around);

/// The wall of a building in the frame of its numbers: the bodies of domes, tunnels and buttresses
/// united, less rooms, tunnels' voids (below the floor only beyond the rings) and openings.
/// Precondition: no join keeps a wall, no opening reaches another element than its own and its
/// dome's buttresses, tunnels end in the open or between two domes and open their walls, no niches,
/// one tube and wythe.
std::vector<BooleanStep> building_steps(const BuildingForm& building, int around);

} // namespace coilwright
