// Triangle meshes as plain data, and what can be asked of one.
#pragma once

#include "geometry/base/vec.hpp"

#include <array>
#include <cstdint>
#include <string>
#include <vector>

namespace coilwright {

/// A closed triangle mesh; vertices shared by index, triangles anticlockwise seen from outside.
/// Metres, x east, y north, z up.
struct Mesh {
    std::vector<Vec3> vertices;
    std::vector<std::array<std::uint32_t, 3>> triangles;
};

/// Signed volume by the divergence theorem, positive for a closed mesh oriented outward.
double volume(const Mesh& mesh);
double surface_area(const Mesh& mesh);
struct Bounds {
    Vec3 low, high;
};
Bounds bounds(const Mesh& mesh);

} // namespace coilwright
