// An independent way to the same solids: Booleans on whole meshes, by CGAL's corefinement.
#pragma once

#include "tests/solids/boolean_operands.hpp"

#include <vector>

namespace coilwright {

/// What a row of Booleans gives. Throws std::runtime_error where one fails.
Mesh by_booleans(const std::vector<BooleanStep>& steps);

/// For each point whether it lies inside a closed mesh.
std::vector<bool> inside(const Mesh& mesh, const std::vector<Vec3>& points);

} // namespace coilwright
