// A building as a row of Booleans on closed meshes, for whatever library can do them: the judges of
// the shell, and what its speed is compared with.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/mesh.hpp"

#include <functional>
#include <vector>

namespace coilwright {

/// `body` less each of `less`, then added to what stands, or taken away from it. The first of a row
/// adds. Bodies are closed and outward, their coordinates on a grid of 2^-20 m.
struct BooleanStep {
    bool adds = true;
    Mesh body;
    std::vector<Mesh> less;
};

/// The body that a radius over height sweeps about the z axis, with `around` edges to a circle,
/// flat at its least and greatest height. `turn` in radians keeps the vertices of two bodies off
/// common spokes.
Mesh revolved_body(const std::function<double(double)>& radius, const std::vector<double>& heights,
                   int around, double turn);

/// A section (to the left of the axis and up, anticlockwise seen against it) carried along a level
/// axis between two distances from an origin.
Mesh carried_body(const std::vector<Vec2>& section, const Vec2& origin, const Vec2& axis,
                  double from, double to);

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
