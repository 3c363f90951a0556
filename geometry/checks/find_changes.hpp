// What would mend a check that fails or is an advice: the smallest change of one value of the
// design with which it holds, found by laying and checking changed designs.
#pragma once

#include "geometry/base/design_change.hpp"
#include "geometry/plan/plan_building.hpp"

#include <vector>

namespace coilwright {

/// How many changes are told of a finding.
inline constexpr std::size_t most_changes = 3;

/// Changes for every finding that fails or is an advice, in their order. A value
/// is tried in steps that can be built (whole courses, inches or centimetres, degrees), doubled
/// until the check holds or the design can no longer be laid, then halved: the step told holds, one
/// step less does not. A check that fails and that nothing makes hold is looked at again until it
/// fails no more. Changes that worsen no other check come first, then the smaller ones; a fitted
/// value counts as one that is written. Nothing is meshed. Works on `threads` at once, with the
/// same result on any number. `findings`: those of all_findings(plan). Precondition: plan.sound().
std::vector<SoughtChanges> find_changes(const BuildingPlan& plan,
                                        const std::vector<Finding>& findings,
                                        const DecideRegion& decide = {}, unsigned threads = 1);

/// "[dome.store] springline = \"4 ft 2 in\" (now 3 ft 9 in): then 2.14"; what it worsens behind it.
std::string change_text(const DesignChange& change, const Finding& finding, DisplayUnit unit);
/// The same as "Change: ..." for each that was found, or that none was; nothing where none was
/// sought.
std::vector<std::string> change_lines(const SoughtChanges* sought, const Finding& finding,
                                      DisplayUnit unit);

} // namespace coilwright
