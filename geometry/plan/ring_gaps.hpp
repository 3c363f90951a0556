// Where the tubes of a ring stop: at openings, tunnels, buttresses and other domes' walls.
#pragma once

#include "geometry/plan/building_form.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// A stretch that is left out of a ring, symmetric about a direction from the pole: a strip along it
/// (|y| <= half_width), or what a disc of another dome covers.
struct RingGap {
    std::string by;          // id of the opening, tunnel, pier or dome
    double middle = 0;       // degrees clockwise from the dome's datum, [0, 360)
    double half_width = 0;   // of a strip; of a disc, half its chord with the centreline
    double disc_distance = 0; // of another dome's pole; 0: a strip
    double disc_radius = 0;
};

/// Half of the gap's angle on a circle about the pole, degrees: asin(a / r) for a strip, by the law of
/// cosines for a disc; 0 where it does not reach the circle, 180 where it covers it whole.
double half_gap_degrees(const RingGap& gap, double radius);

/// Whether the tubes of a tunnel or a pier run in to the ring's inside face in course n, and the ring
/// stops at them: on even courses above the floor where the wall stands plumb. A pier runs in only
/// where no lintel or fan lies in its way.
bool tunnel_runs_in(const TunnelForm& tunnel, const DomeForm& dome, int n);
bool pier_runs_in(const BuildingForm& building, const ButtressForm& pier, const DomeForm& dome, int n);

enum class Bond {
    laid, // as tubes are laid: alternate courses stop at tunnels and buttresses, lintels take their
          // courses, fans theirs
    wall  // the voids of the wall alone
};

/// The gaps of a dome in course n, by their middle. Openings cut at a(z_n), if that leaves at least a
/// course height. A tunnel cuts at b(z_n) on odd courses and at its outside on even ones; a buttress
/// does not cut odd courses and takes its width out of even ones. From the course where the wall
/// starts to lean both butt against the ring, which must act as a ring: tunnels cut at b, buttresses
/// not at all. Below the floor only other domes cut.
std::vector<RingGap> gaps_in_ring(const BuildingForm& building, const DomeForm& dome, int n,
                                  Bond bond);

/// An arc of the centreline that is kept between two gaps, degrees from the datum, start < end.
struct KeptArc {
    double start = 0, end = 0;
    const RingGap* starts_at = nullptr; // the gap that ends at `start`; none: a full ring
    const RingGap* ends_at = nullptr;
};

/// What the gaps leave of a circle, clockwise from the datum; overlapping gaps are one. Empty where
/// they leave nothing; arcs shorter than 1e-6 m are dropped.
std::vector<KeptArc> kept_arcs(const std::vector<RingGap>& gaps, double radius);

} // namespace coilwright
