// The short bags that lie beside the tubes of a ring: wedges between two cuts, backs of niches, the
// tapered bags of fans.
#pragma once

#include "geometry/design/design.hpp"
#include "geometry/plan/laid.hpp"
#include "geometry/plan/ring_gaps.hpp"

#include <vector>

namespace coilwright {

/// A stretch between two gaps that is too short for a run, with the gaps that stop it.
struct WedgePlace {
    const RingGap* starts_at = nullptr;
    const RingGap* ends_at = nullptr;
    double inside = 0, centre = 0,
           outside = 0;        // lengths along the faces and the centreline, metres
    double start = 0, end = 0; // on the centreline, degrees clockwise from the datum
};

/// The wedges of a ring: what its gaps leave of the centreline in stretches of less than half a
/// tube's width, and what they leave of a face alone where it is longer than `least_wedge` but less
/// than a tube is wide; clockwise. A stretch whose longest edge is under `least_wedge` takes no
/// bag.
inline constexpr double least_wedge = 0.02; // metres
std::vector<WedgePlace> wedges_of(const std::vector<RingGap>& gaps, const Ring& ring);

/// A wedge as it is cut: along its longest edge, with both end allowances. Its `fill_volume` is
/// left as its area in plan, to be multiplied by the course height.
Piece wedge_piece(const WedgePlace& place, const Ring& ring, Bearing datum,
                  const CourseRules& rules);

/// The bag that closes the wall behind a niche in a ring that it cuts with that half-width, cut
/// along the outside face. The back plane stands straight across the niche's axis, at `face` from
/// the pole. R 1.9, face 1.75, half-width 0.3 -> 0.6025 long outside, 0.0852 m2 in plan, which
/// `fill_volume` holds as for a wedge.
Piece niche_back(const OpeningForm& niche, double half_width, double face, const Ring& ring,
                 const CourseRules& rules);

/// The bags of an opening's fan that are set before course n of its dome: each before the first
/// course that butts against it, which is the first whose middle lies at its lower outer corner or
/// above it; what lies higher than all courses before the last of them. Each is cut as long as the
/// tube must be, tamped to the section of a course, to hold its fill.
std::vector<Piece> fan_pieces(const OpeningForm& opening, const DomeForm& dome, int n,
                              const CourseRules& rules);

} // namespace coilwright
