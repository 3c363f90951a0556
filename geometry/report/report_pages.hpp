// The kinds of pages of the engineer's report, each made by a source of its own.
#pragma once

#include "geometry/base/design_change.hpp"
#include "geometry/checks/building_statics.hpp"
#include "geometry/drawing/page.hpp"

#include <vector>

namespace coilwright {

/// What was asked, what is assumed, what was not considered, room for a stamp.
std::vector<Sheet> basis_pages(const Drafting& drafting, const std::vector<Finding>& findings);
/// What the building is taken to be made of and loaded with, each value with its source.
std::vector<Sheet> material_pages(const Drafting& drafting);
/// Each check with message, formula, value, limit and source.
std::vector<Sheet> check_pages(const Drafting& drafting, const std::vector<Finding>& findings,
                               const std::vector<SoughtChanges>& changes);
/// Findings of the plan, of use and of practice: messages with value, limit and source.
std::vector<Sheet> other_check_pages(const Drafting& drafting,
                                     const std::vector<Finding>& findings);
/// Lintels as beams, and what they carry; none where there is no lintel.
std::vector<Sheet> lintel_pages(const Drafting& drafting);
/// Sections with lines of thrust, membrane forces, courses and joints of one dome.
std::vector<Sheet> dome_pages(const Drafting& drafting, const DomeForm& dome,
                              const DomeAnalysis& analysis);
/// The same of a tunnel.
std::vector<Sheet> tunnel_pages(const Drafting& drafting, const TunnelForm& tunnel,
                                const TunnelAnalysis& analysis);

} // namespace coilwright
