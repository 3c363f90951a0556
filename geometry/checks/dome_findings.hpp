// What limit analysis finds of a dome.
#pragma once

#include "geometry/checks/building_statics.hpp"

#include <vector>

namespace coilwright {

/// In the worst strip: `geometric-safety` (by how much every joint could shrink before no line of
/// thrust keeps within it), `joint-sliding` (friction over what the rings leave to it),
/// `free-corbel` (what stands without its ring), `fill-crushing`. Not judged where a course finds
/// nothing to lie on.
std::vector<Finding> dome_findings(const Design& design, const DomeForm& dome,
                                   const DomeAnalysis& analysis);

/// The geometric factor of safety alone, as the remedies ask for it again and again.
Finding geometric_safety(const Design& design, const DomeForm& dome, const DomeStatics& statics);

/// From the springline to the ground: `stem-sliding`, `stem-overturning`, `ground-pressure` (not
/// judged without `[ground] bearing_capacity`), `pier-pressure` between openings.
std::vector<Finding> ground_findings(const Design& design, const DomeForm& dome,
                                     const DomeAnalysis& analysis);

/// `earthquake-slice` and `wind-slice`: what a slice without rings bears, against [site]; not
/// judged where the site is not given, nor where the slice does not stand without its rings.
std::vector<Finding> sideways_findings(const Design& design, const DomeForm& dome,
                                       const DomeAnalysis& analysis);

/// `open-stages`: whether a line of thrust keeps within every stage of building, its last ring
/// closed, clear of openings and beside each. While an opening's form stands the wall beside it
/// may lean on it: then it is advice. One linear program a course clear of openings; beside them
/// one for every third, and four more.
std::vector<Finding> stage_findings(const Design& design, const DomeForm& dome,
                                    const DomeAnalysis& analysis);

} // namespace coilwright
