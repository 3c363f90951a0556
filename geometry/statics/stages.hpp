// A dome while it is built, course by course.
#pragma once

#include "geometry/statics/dome_slice.hpp"

#include <vector>

namespace coilwright {

/// The dome up to course `last`, its ring closed unless a gap breaks it.
struct BuildingStage {
    int last = 0;
    bool stands = false; // with its rings; the last one closed, tamped and grown hard
    double share = 0;    // as CentredThrust; unlimited where nothing helps
    double open_lever =
        0; // of the last course before its ring is closed: the free cantilever about the
           // edge of the flat under it, m; negative: what is laid of it needs a prop
};

/// The stage with course `last` laid. `what.last` is not read. Under its own weight; friction as
/// `what` says. Preconditions: contacts longer than 0; what.first <= last.
BuildingStage building_stage(const std::vector<WallCourse>& courses, const DomeSlice& what,
                             int last);

} // namespace coilwright
