// The whole first half in one call: design text -> schedule with findings, or diagnostics.
#pragma once

#include "geometry/plan/headroom.hpp"
#include "geometry/plan/schedule.hpp"
#include "geometry/plan/tunnel_headroom.hpp"

#include <string_view>
#include <vector>

namespace coilwright {

struct BuildingPlan {
    Design design;     // as fitted
    Schedule schedule; // empty where there are diagnostics
    std::vector<Headroom> headroom;
    std::vector<TunnelHeadroom> tunnel_headroom; // one a tunnel
    std::vector<Finding> findings;               // practice and headroom verdicts, worst first
    std::vector<Diagnostic> diagnostics;         // all faults at once, in the order of the file
    bool sound() const { return diagnostics.empty(); }
};

/// Failing ones first, then ratios under their limit that are not judged, advice, the others that
/// are not judged, those that hold; else as they stand.
void put_worst_first(std::vector<Finding>& findings);

/// Takes a design as read (and what the reader found wrong) through fitting, layout checks, laying
/// and findings. With diagnostics, only the faults of sound elements are added. `decide`: as for
/// lay().
BuildingPlan plan_building(Design design, std::vector<Diagnostic> diagnostics,
                           const DecideRegion& decide = {});

} // namespace coilwright
