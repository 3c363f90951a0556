// One tamped tube as a rounded body along its arc or its line, and the disc of a cap course.
#pragma once

#include "geometry/plan/ring_gaps.hpp"
#include "geometry/solids/mesh.hpp"

#include <optional>

namespace coilwright {

/// A tube of stadium section laid about the pole at the origin. Angles at its centreline, radians,
/// anticlockwise, start < end. An end at a gap in the ring is the gap's own face: plumb beside the
/// axis of an opening, tunnel or pier, round at another dome's wall; other ends are radial.
struct TubeBody {
    double inside_radius = 0;
    double width = 0;  // w
    double bottom = 0; // height of its underside
    double height = 0; // t, less than w
    double start = 0, end = 0;
    std::optional<RingGap> start_gap, end_gap;
    bool endless = false; // start and end are one: a ring without end faces
};

/// A straight tube in the frame of its own centreline: from the origin along x, y to its left. Ends
/// are square, or follow the face of a round wall: a circle, of which the tube fills the outside.
struct StraightBody {
    double length = 0; // of the centreline
    double width = 0, bottom = 0, height = 0;
    std::optional<Disc> start_wall, end_wall;
};

/// Facets lie within the tolerance of the true body, corners on it. Radius 2, w 0.4, t 0.15, a
/// quarter of a turn: 0.1891 m3. Preconditions: the tube is longer than nothing on its inside.
Mesh mesh_tube(const TubeBody& body, double tolerance);
/// Length 2, w 0.4, t 0.15, square ends: 0.1103 m3.
Mesh mesh_straight(const StraightBody& body, double tolerance);

/// About how many triangles those take, without making them.
double tube_triangles(const TubeBody& body, double tolerance);
double straight_triangles(const StraightBody& body, double tolerance);

/// A solid disc with a rounded rim: `radius` to the rim's outermost, more than half the height.
Mesh mesh_disc(double radius, double bottom, double height, double tolerance);

/// Of a disc, by Pappus: radius 0.5, height 0.1 -> 0.0748 m3.
double disc_volume(double radius, double height);

} // namespace coilwright
