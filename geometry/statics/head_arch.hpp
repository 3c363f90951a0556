// The fan of bags over an opening as an arch under the wall that it carries.
#pragma once

#include "geometry/plan/heads.hpp"
#include "geometry/statics/slice.hpp"

#include <optional>

namespace coilwright {

struct HeadLoad {
    double wall_thickness = 0;   // m, of the fan's bags and of the wall above
    double unit_weight = 0;      // N/m3, of both
    double cover = 0;            // height of wall above the fan's crown that it carries
    double friction = unlimited; // between its bags
};

/// The arch of an opening's fan, as many bags as it has, with a plumb column of wall on each from
/// the fan's outer curve to `cover` above its crown (no arching of the wall itself counted); N in
/// all, of the wall's whole thickness. Round, segmental and the upper half of circles: both
/// springings, left to right. Pointed: the right half from the crown's plumb joint, with half of
/// the bags, rounded up. None where the head is not laid as a fan.
std::optional<Slice> head_arch(const OpeningForm& opening, const HeadLoad& load);

} // namespace coilwright
