// Arches of voussoirs with joints square to the curve, 1 m deep.
#pragma once

#include "geometry/statics/slice.hpp"

namespace coilwright {

/// An arch between two circles about the origin, cut by radial joints. Angles in radians from the
/// crown, positive to the right.
struct CircularArch {
    double radius = 0;    // of the middle line
    double thickness = 0; // < 2 radius
    double from = 0, to = 0;
    int voussoirs = 0;
    double unit_weight = 0; // N/m3
    double friction = unlimited;
};

/// Blocks have the true weight and centre of their sector: a sector of half angle b has its centre
/// (2/3)(ro3 - ri3)/(ro2 - ri2) sin(b)/b from the origin. Radius 1, thickness 0.2, one block over
/// +-pi/2 -> weight 0.628319 x unit weight, centre 0.638742 up. sway = weight.
Slice circular_arch(const CircularArch& arch);

/// The right half of a two-centred (pointed) arch on its springing line at z = 0, intrados
/// half-span a and arc radius rho >= a about (a - rho, 0), as thick as said, from a plumb crown
/// joint without shear to the springing. rho = a: round. The half of a symmetric arch has the same
/// least and greatest thrust and the same safety as the whole under its own weight.
struct PointedArch {
    double half_span = 0, arc_radius = 0;
    double thickness = 0;
    int voussoirs = 0; // of the half, >= 2
    double unit_weight = 0;
    double friction = unlimited;
};
/// Joints are radial from the arc's centre but for the crown's.
Slice half_pointed_arch(const PointedArch& arch);

} // namespace coilwright
