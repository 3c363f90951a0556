// The outlines of tubes in plan: what of a ring course is drawn, still in metres and bearings.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// A tube or a run seen from above, between two ends that may be skew to the radius (at a cut they
/// follow the opening's side). Bearings in degrees about the pole, not reduced: start < end,
/// clockwise.
struct BandShape {
    double inside_radius = 0, outside_radius = 0;
    double inside_start = 0, inside_end = 0;   // on the inside face
    double outside_start = 0, outside_end = 0; // on the outside face
    double middle() const { return (inside_start + inside_end + outside_start + outside_end) / 4; }
};

/// The shape of one tube of a run; its ends at cuts are skew, at joints radial.
BandShape tube_shape(const Ring& ring, const Run& run, const LaidTube& tube);

/// The ring in which a dome takes part in a course, or nullptr.
const Ring* ring_of_dome(const Course& course, const std::string& dome);

/// Plan to paper: where the pole lies on the sheet, the scale, and where the pole stands.
struct PlanFrame {
    Vec2 pole{0, 0}; // mm
    double mm_per_metre = 0;
    Vec2 origin{0, 0}; // metres: of the pole, in the design's frame
    /// The paper's point of a point of the design.
    Vec2 of(Vec2 metres) const { return pole + (metres - origin) * mm_per_metre; }
    /// The paper's point at a bearing and a distance in metres from the pole.
    Vec2 at(double bearing_degrees, double metres) const;
};

/// The filled outline of a band.
FillItem band_fill(const BandShape& shape, const PlanFrame& frame, Ink ink);

} // namespace coilwright
