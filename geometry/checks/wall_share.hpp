// How much of a dome's courses is open, and what stands between the openings.
#pragma once

#include "geometry/plan/ring_gaps.hpp"
#include "geometry/plan/schedule.hpp"

#include <string>

namespace coilwright {

/// The course of which the most is open. Openings, tunnels and open joins count, sleeves do not.
struct OpenCourse {
    int course = 0;   // 0: none is open
    double share = 0; // of the centreline's length that is open
    double joins = 0; // of that, by open joins alone
};
/// With all openings and tunnels `narrower` times as wide.
OpenCourse most_open_course(const BuildingForm& building, const WallRelations& relations, int dome,
                            double narrower = 1);

/// The narrowest pier: along the centreline between two openings or tunnels that one course has.
struct Pier {
    int course = 0; // 0: no course has two
    double length = 0, radius = 0;
    std::string from, to; // clockwise
};
Pier narrowest_pier(const BuildingForm& building, const WallRelations& relations, int dome);

} // namespace coilwright
