// One tamped tube as a rounded body along its arc, and the disc of a cap course.
#pragma once

#include "geometry/solids/mesh.hpp"

#include <optional>

namespace coilwright {

/// A tube of stadium section laid about the pole at the origin. Angles at its centreline, radians,
/// anticlockwise, start < end. An end at an opening is the plane that stands `cut` beside the
/// opening's axis: on a circle of radius r the tube ends asin(cut / r) from that axis; other ends
/// are radial.
struct TubeBody {
    double inside_radius = 0;
    double width = 0;  // w
    double bottom = 0; // height of its underside
    double height = 0; // t, less than w
    double start = 0, end = 0;
    std::optional<double> start_cut, end_cut;
    bool endless = false; // start and end are one: a ring without end faces
};

/// Facets lie within the tolerance of the true body, corners on it. Radius 2, w 0.4, t 0.15, a
/// quarter of a turn: 0.1891 m3. Preconditions: the tube is longer than nothing on its inside.
Mesh mesh_tube(const TubeBody& body, double tolerance);

/// About how many triangles that takes, without making them.
double tube_triangles(const TubeBody& body, double tolerance);

/// A solid disc with a rounded rim: `radius` to the rim's outermost, more than half the height.
Mesh mesh_disc(double radius, double bottom, double height, double tolerance);

/// Of a disc, by Pappus: radius 0.5, height 0.1 -> 0.0748 m3.
double disc_volume(double radius, double height);

} // namespace coilwright
