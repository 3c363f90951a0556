// Closed outlines of straight edges and arcs: moved in or out by a thickness, measured.
// Anticlockwise; metres.
#pragma once

#include "geometry/drawing/straight_shapes.hpp"

#include <optional>

namespace coilwright {

/// The outline with every edge moved outwards by `by` (inwards if negative) and neighbours met
/// again where they cross: corners stay corners. Square of 1, by 0.1 -> square of 1.2. Nothing
/// where an edge would turn round or neighbours no longer meet: then nothing is left of it.
/// Precondition: closed, anticlockwise, no edge without length.
std::optional<Outline> moved_out(const Outline& outline, double by);

/// Signed area, anticlockwise positive: a half disc of radius 1 -> pi / 2.
double area_of(const Outline& outline);
/// Length of all its edges.
double length_of(const Outline& outline);
/// The point at a distance along it from its start, and the unit vector outwards there (to the
/// right of the way).
struct OutlinePlace {
    Vec2 at{0, 0}, outward{0, 0};
};
OutlinePlace place_along(const Outline& outline, double distance);

} // namespace coilwright
