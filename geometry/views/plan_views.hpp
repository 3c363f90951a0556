// Level cuts and views from above: floor plan, foundation plan, roof and site plan.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/views/mesh_edges.hpp"
#include "geometry/views/view.hpp"

#include <map>
#include <string>

namespace coilwright {

/// Height above the floor at which a floor plan is cut unless another is asked for: 4 ft, common
/// practice.
inline constexpr double usual_plan_height = 1.2192, usual_metric_plan_height = 1.2;

/// Tags of the openings by id: D1, D2 doors, W windows, V vents, N niches, in the order of the
/// schedule.
std::map<std::string, std::string> opening_tags(const Schedule& schedule);
/// "S1", by the id of the dome that ends in a skylight.
std::map<std::string, std::string> skylight_tags(const Schedule& schedule);

/// Where an opening meets the faces of its wall at a height, along its axis from its origin and at
/// its jambs. `half` is the half-width that is meant. Left and right as seen along the axis.
struct HoleFaces {
    double inner = 0, outer = 0; // on the axis
    double half = 0;
    Vec2 inner_left{0, 0}, inner_right{0, 0}, outer_left{0, 0}, outer_right{0, 0};
};
HoleFaces hole_faces(const BuildingForm& building, const OpeningForm& opening, double half,
                     double z);

/// The walls cut level at a height, hatched from the exact region; the foot of the walls, openings
/// with tags and bearings, what lies above or below the cut dashed, chains of dimensions.
/// Precondition: plan.sound().
View floor_plan(const BuildingPlan& plan, double height);

/// The lowest course, hatched, in its trench.
View foundation_plan(const BuildingPlan& plan);

/// The building from above with its poles and bearings, `shell` being its walls as a mesh of
/// `tolerance`.
View roof_plan(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance);

} // namespace coilwright
