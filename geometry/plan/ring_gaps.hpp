// Where the tubes of a ring stop: at openings, tunnels, buttresses, sleeves and other domes' walls.
#pragma once

#include "geometry/plan/building_form.hpp"

#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace coilwright {

enum class GapKind {
    strip, // along the direction `middle`: |y| <= half_width
    disc,  // what a disc of another dome covers
    band   // what the ring of another dome covers, on one side of the line between the poles
};

/// A stretch that is left out of a ring, as seen from its pole.
struct RingGap {
    std::string by;           // id of the opening, tunnel, pier, sleeve or dome
    double middle = 0;        // degrees clockwise from the dome's datum, [0, 360)
    double half_width = 0;    // of a strip; of a disc or band, half its chord with the centreline
    double disc_distance = 0; // of another dome's pole, on the direction `middle`; 0: a strip
    double disc_radius = 0;   // of a band: outside
    double band_inside = 0;   // inside radius of a band; 0: none
    int band_side = 0; // of a band: 1 right (clockwise) of the line between the poles, -1 left

    GapKind kind() const {
        return disc_distance == 0 ? GapKind::strip : band_side == 0 ? GapKind::disc : GapKind::band;
    }
};

/// Half of the gap's angle on a circle about the pole, degrees: asin(a / r) for a strip, by the law
/// of cosines for a disc; 0 where it does not reach the circle, 180 where it covers it whole.
/// Precondition: no band.
double half_gap_degrees(const RingGap& gap, double radius);

/// Where the gap starts and ends on a circle about the pole, degrees clockwise from the datum,
/// start < end; none where it does not reach it. A band's end lies where the other ring's inside
/// face does, or on the line between the poles where that does not reach the circle.
std::optional<std::pair<double, double>> gap_ends(const RingGap& gap, double radius);

/// Whether the tubes of a tunnel or a pier run in to the ring's inside face in course n, and the
/// ring stops at them: on even courses where the wall stands plumb, a tunnel above the floor only.
/// A pier runs in only where no lintel or fan lies in its way.
bool tunnel_runs_in(const TunnelForm& tunnel, const DomeForm& dome, int n);
bool pier_runs_in(const BuildingForm& building, const WallRelations& relations, int pier, int n);
/// Whether the ring of a dome that stops at another's wall runs in to that wall's inside face in
/// course n, and the other's ring stops at it: where their join is bonded, on even courses where
/// both stand plumb and their inside faces cross.
bool ring_runs_in(const BuildingForm& building, const DomeForm& stopped, const DomeForm& kept,
                  int n);

enum class Bond {
    laid, // as tubes are laid: alternate courses stop at tunnels, buttresses and joined rings,
          // lintels take their courses, fans theirs, sleeves their gap
    wall  // the voids of the wall alone
};

/// The gaps of a dome, by its place in the building, in course n, ordered by their middle. Openings
/// cut at a(z_n), if that leaves at least a course height. A tunnel cuts at b(z_n) on odd courses
/// and at its outside on even ones; a buttress does not cut odd courses and takes its width out of
/// even ones. From the course where the wall starts to lean both butt against the ring, which must
/// act as a ring: tunnels cut at b, buttresses not at all. Below the floor only sleeves and other
/// domes cut. Where two walls in open plan cross, the ring of the dome that comes first in the
/// building runs through on odd courses and butts against the other's outside face on even ones.
std::vector<RingGap> gaps_in_ring(const BuildingForm& building, const WallRelations& relations,
                                  int dome, int n, Bond bond);
/// The same for one of the building's domes alone.
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
