// Buildings to draw: the demos, one made to be crowded, and random ones.
#pragma once

#include "geometry/plan/plan_building.hpp"

#include <string>
#include <vector>

namespace coilwright::testing {

/// models/NAME.toml as laid.
BuildingPlan demo_plan(const std::string& name);
/// One of models, laid: several domes, tunnels, buttresses.
BuildingPlan whole_plan(const std::string& name);
/// A dome of 14 ft with six openings of all heads, long ids, a long name in several scripts.
BuildingPlan crowded_plan();
/// A dome of 34 ft with sixteen windows in a row: 32 cuts in a course.
BuildingPlan dense_plan();
/// Two domes that stand apart, read on a chain from a pole of stated thickness.
BuildingPlan pair_plan(DisplayUnit unit = DisplayUnit::metres);
/// Demos of one dome, in feet and metres, the crowded one and the pair.
std::vector<BuildingPlan> several_plans();
/// The first `count` random designs from `first_seed` on that can be laid, with their seeds.
struct SeededPlan {
    std::uint64_t seed = 0;
    BuildingPlan plan;
};
std::vector<SeededPlan> random_plans(std::uint64_t first_seed, int count);

} // namespace coilwright::testing
