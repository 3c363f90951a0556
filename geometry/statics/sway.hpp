// Sideways loads on slices with parallel sides: earthquake as an even acceleration, wind as
// pressure.
#pragma once

#include "geometry/plan/tunnel_form.hpp"
#include "geometry/statics/dome_slice.hpp"

#include <vector>

namespace coilwright {

/// The courses of a dome as a slice with parallel sides sees them: half-widths and N per metre of
/// depth, as tunnel_courses gives them. No hoops: this slice bears less than a lune, which grows
/// lighter towards the top, and less than the dome.
std::vector<WallCourse> parallel_courses(const Design& design, const DomeForm& dome,
                                         const DomeLoads& loads = {});

struct SwaySlice {
    double friction = unlimited;
    double ground_friction = unlimited;
    double wind = 0; // Pa against the left side, above `wind_from`
    double wind_from = 0;
};

/// The whole arch of such courses, from the joint under the left course 1 over the crown to the
/// right one. The solid courses at the crown are one block; under a skylight the curb and the ring
/// it stands on are one, because the closed curb spans the hole. sway = weight. Preconditions:
/// contacts longer than 0; `spans_from`, the lowest course of the block at the crown, lies above
/// course 1.
Slice sway_slice(const std::vector<WallCourse>& courses, int spans_from,
                 const SwaySlice& what = {});

/// The lowest course of that block in a dome: the first disc of its cap, or its last ring.
int crown_block_from(const DomeForm& dome);

/// The greatest even horizontal acceleration that the slice bears, as a share of gravity; 0 where
/// it does not stand without. A semicircle of thick blocks as tests/published shows: 0.370 g.
double sway_capacity(const Slice& slice);

/// The greatest even wind pressure against the left side, Pa; 0 where it does not stand without.
double wind_capacity(const std::vector<WallCourse>& courses, int spans_from, SwaySlice what);

/// A free-standing wall of even thickness: it tips at contact/height of its weight, and slides at
/// the friction. 0.25 m of flat, 2 m high, friction 0.5 -> 0.125.
double free_wall_capacity(double contact_width, double height, double friction);

} // namespace coilwright
