// A tunnel's vault and walls as the half of an arch, 1 m long.
#pragma once

#include "geometry/statics/dome_slice.hpp"

#include <vector>

namespace coilwright {

/// The courses of one side of a tunnel, bottom up: half-widths from its axis where a dome has
/// radii, weights in N per metre of its length; `cap` courses are the right half of the solid ones
/// at the crown. Openings in its sides are left out: gaps are empty. Fill and plaster as for
/// dome_courses.
std::vector<WallCourse> tunnel_courses(const Design& design, const TunnelForm& tunnel,
                                       const DomeLoads& loads = {});

struct TunnelSlice {
    double friction = unlimited;
    double ground_friction = unlimited;
};

/// The right half: the solid crown as one block with a plumb joint on the axis that carries no
/// shear (symmetry), then every course down to the ground. Its end is the joint under course 1.
/// Precondition: contacts are longer than 0 (first_without_contact), the crown has a course.
Slice tunnel_slice(const std::vector<WallCourse>& courses, const TunnelSlice& what = {});

} // namespace coilwright
