// The outlines of straight tubes in plan, in metres of the design's frame: piers, tunnel walls, end
// walls, crowns. Ends that butt against a ring follow its curve.
#pragma once

#include "geometry/drawing/ring_shapes.hpp"

#include <vector>

namespace coilwright {

/// One edge of an outline, ending at `to`: straight, or an arc with tan(sweep / 4).
struct OutlineEdge {
    Vec2 to{0, 0};
    double bulge = 0;
};
struct Outline {
    Vec2 from{0, 0};
    std::vector<OutlineEdge> edges;
};

/// A tube of a straight run: its outline and its middle.
struct StraightShape {
    Outline outline;
    Vec2 start{0, 0}, end{0, 0}; // of its centreline
    double width = 0;
    const LaidTube* tube = nullptr;
};

/// The tubes of a run, one after the other. Piers and crowns are drawn as wide as their tubes lie
/// apart, so that they neither overlap nor gape.
std::vector<StraightShape> straight_shapes(const BuildingForm& building, const Course& course,
                                           const Straight& straight);

/// The part of a segment that lies in an upright box; none where they do not meet.
struct Segment {
    Vec2 from{0, 0}, to{0, 0};
};
std::vector<Segment> clipped(const Segment& segment, Vec2 low, Vec2 high);
/// The parts of an arc (radians, start <= end) about a centre that lie in an upright box, as pairs
/// of angles.
std::vector<std::pair<double, double>> clipped_arc(Vec2 centre, double radius, double start,
                                                   double end, Vec2 low, Vec2 high);

} // namespace coilwright
