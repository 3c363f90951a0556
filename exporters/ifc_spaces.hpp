// Rooms and floor of a building as IFC.
#pragma once

#include "exporters/ifc_file.hpp"
#include "geometry/base/slug.hpp"
#include "geometry/plan/plan_building.hpp"

#include <vector>

namespace coilwright {

/// A space a room of the schedule (building_rooms.hpp), a tunnel's too, with its floor area and
/// volume; their bodies do not overlap.
std::vector<StepValue> add_spaces(IfcFile& file, SlugTable& slugs, const BuildingPlan& plan,
                                  const StepValue& place);

/// The floor from bag face to bag face: as deep as the design says, else its face alone.
StepValue add_floor(IfcFile& file, SlugTable& slugs, const BuildingPlan& plan,
                    const StepValue& place);

} // namespace coilwright
