// The elements of a building beside its courses, as the schedule's JSON holds them.
#pragma once

#include "exporters/json_values.hpp"
#include "geometry/plan/plan_building.hpp"

namespace coilwright {

/// {"tubes": [...], "domes": [...], "openings": [...]}: forms as built, by id.
Json json_elements(const BuildingPlan& plan);

Json json_fitted(const Fitted& fitted);
Json json_headroom(const Headroom& headroom);
Json json_headroom(const TunnelHeadroom& headroom);

} // namespace coilwright
