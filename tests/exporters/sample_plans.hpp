// Building plans: one made by hand with awkward values, and those of the demo designs.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "tests/support/demos.hpp"
#include "tests/support/files.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// One dome of three courses (a full ring, a ring with an opening, a cap) with values that are hard
/// to write: bearings that round to 360, zeros below zero, a slope that is not finite, odd texts.
BuildingPlan awkward_plan();

/// Names of the whole designs in models: every element of the format is in one.
std::vector<std::string> whole_building_names();
/// The plan of one, laid as plan_building lays it.
BuildingPlan whole_building_plan(const std::string& name);

using testing::demo_files;
using testing::demo_plan;

} // namespace coilwright
