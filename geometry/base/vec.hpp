// Points and vectors. Frame: x east, y north, z up, right-handed, metres.
#pragma once

#include <Eigen/Core>

namespace coilwright {

using Vec2 = Eigen::Vector2d;
using Vec3 = Eigen::Vector3d;

} // namespace coilwright
