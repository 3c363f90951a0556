// An independent way to the same solids: Booleans on whole meshes, by CGAL's corefinement.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/mesh.hpp"

#include <vector>

namespace coilwright {

/// The wall of a dome in its own frame (x along the datum) as the outer solid of revolution less
/// the room less one prism an opening, with `around` edges to a circle. Throws std::runtime_error
/// where a Boolean fails.
Mesh wall_by_booleans(const DomeForm& form, const std::vector<OpeningForm>& openings, int around);

/// The wall of a building in the frame of its numbers: the bodies of domes, tunnels and buttresses
/// united, less rooms, tunnels' voids (below the floor only beyond the rings) and openings.
/// Precondition: no join keeps a wall, no opening reaches another element than its own and its
/// dome's buttresses, tunnels end in the open or between two domes and open their walls, no niches,
/// one tube and wythe.
Mesh building_by_booleans(const BuildingForm& building, int around);

/// For each point whether it lies inside a closed mesh.
std::vector<bool> inside(const Mesh& mesh, const std::vector<Vec3>& points);

} // namespace coilwright
