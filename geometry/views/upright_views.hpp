// Upright cuts and views: sections through a pole, and elevations.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/views/mesh_edges.hpp"
#include "geometry/views/view.hpp"

#include <string>

namespace coilwright {

/// The dome that the default sections go through: that of the first door, or of the first tunnel
/// into the open, else the first. `bearing` is that of its door or tunnel, else of its datum.
struct MainAxis {
    const DomeForm* dome = nullptr;
    Bearing bearing;
};
MainAxis main_axis(const Schedule& schedule);

/// The walls cut by an upright plane through a dome's pole along a bearing, which is on the right;
/// what lies beyond; floor, ground, springline, apex, headroom, the compass's centre. `shell` is
/// the walls as a mesh of `tolerance`. Precondition: plan.sound().
View section(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance,
             const DomeForm& dome, Bearing right, const std::string& letter);

/// The building as seen from a bearing, hidden lines taken away.
View elevation(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance, Bearing from);

/// What stands above the ground as seen from a bearing and `pitch` degrees above the level (over 0,
/// under 90), by a parallel projection, hidden lines taken away.
View oblique_view(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance, Bearing from,
                  double pitch);

/// "from the south (180.00°)".
std::string side_text(Bearing from);

} // namespace coilwright
