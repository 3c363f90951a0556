// Small solids made by hand, whose volumes are known in closed form.
#pragma once

#include "geometry/solids/solid_model.hpp"

namespace coilwright {

/// A box between two corners: 8 vertices, 12 triangles.
Mesh box_mesh(const Vec3& low, const Vec3& high);

/// A torus about a vertical axis as `around` x `across` quads, each cut in two. Its volume is
/// around sin(2 pi / around) / 2 x across sin(2 pi / across) / 2 x 2 R r^2 (Pappus on the polygons:
/// prisms between planes through the axis), R to the middle of the tube.
Mesh torus_mesh(const Vec3& centre, double ring_radius, double tube_radius, int around, int across);
double torus_volume(double ring_radius, double tube_radius, int around, int across);

/// A part with its volume taken from the mesh.
SolidPart sample_part(std::string slug, std::string group, Mesh mesh);

/// A building of one dome with two courses of one torus each and a lintel under the dome itself.
SolidModel small_building();

/// One torus of 66,000 vertices: more than 16-bit indices can name.
SolidModel fine_torus();

} // namespace coilwright
