// The equations of a slice as a linear program; forces and lengths scaled to be near 1.
#pragma once

#include "geometry/statics/slice.hpp"

namespace coilwright {

/// Columns are by joint and by block; -1 where a column is not there.
struct SliceProgram {
    LinearProgram program;
    double force = 1, length = 1;              // what 1 stands for, N and m
    std::vector<int> normal, shear, moment;    // by joint; moment in units of half its contact
    std::vector<int> hoop_low, hoop_high, tie; // by block
    std::vector<int> balance_x, balance_z, balance_turn; // rows by block, turn about its centre
    int load_factor = -1;
};

/// Equilibrium of every block, friction where it has a limit; nothing yet about where in its
/// contact a joint is pressed. The load factor is held at 0.
SliceProgram equilibrium_program(const Slice& slice, bool with_friction = true);

/// Rows for each joint: the moment keeps within `share` of its contact.
void keep_within(SliceProgram& built, double share);

double half_contact(const SliceJoint& joint);
Vec2 middle(const SliceJoint& joint);
Vec2 along(const SliceJoint& joint);     // unit, from the inner to the outer end
Vec2 square_to(const SliceJoint& joint); // unit, from the block after to the block before

/// The forces of a solution in N and m.
ThrustLine read_thrust(const Slice& slice, const SliceProgram& built, const std::vector<double>& x);

} // namespace coilwright
