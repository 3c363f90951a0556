// Whether what stands in a room fits there: furniture, a shower tray, a person.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// The corners of a [context.NAME] object where it stands, metres.
struct PlacedObject {
    std::string id;
    SourcePlace place;
    std::vector<Vec3> corners;
};

/// How an object stands in the clear rooms of all domes (room.hpp).
struct ObjectFit {
    std::string dome;    // in whose room its middle stands, or else a corner; empty: in none
    double nearest = 0;  // from its corners to the plaster, least; negative: it stands into it
    double headroom = 0; // from its corners up to the plaster, least; 0 outside
};

/// Rooms are convex, so that the corners decide for edges and faces too. A point belongs to the
/// room that it is deepest in: where rooms open to each other their common edge is none. Openings
/// and tunnels count as walls. Precondition: corners is not empty.
ObjectFit object_fit(const PlacedObject& object, const std::vector<DomeForm>& domes,
                     double inside_plaster);

/// One finding an object: `context-fit` holds, fails where it stands into the plaster or its box
/// meets another object's box by more than 1 mm, and is not judged outside of every room.
std::vector<Finding> context_findings(const std::vector<PlacedObject>& objects,
                                      const Schedule& schedule, double inside_plaster);

} // namespace coilwright
