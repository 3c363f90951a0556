// A slice of a wall, a vault or a dome as blocks in a row with joints between them: what limit
// analysis of masonry works on.
#pragma once

#include "geometry/base/vec.hpp"
#include "geometry/statics/linear_program.hpp"

#include <optional>
#include <vector>

namespace coilwright {

/// The part of a joint that carries: from its inner to its outer end. Turned a quarter
/// anticlockwise, inner -> outer points from the block after the joint to the block before it: from
/// left to right over an arch, and from the top of a wall on the right of its room down.
struct SliceJoint {
    Vec2 inner{0, 0}, outer{0, 0};
    double friction = unlimited; // |shear| <= friction x normal; 0 on an axis of symmetry
};

/// A rigid block. A slice of parallel sides is 1 m deep: forces in N per metre. A slice of a dome
/// is a wedge of one radian about the pole at x = 0: forces in N per radian; then the hoop forces
/// that its ring passes on, in N, push it outward with as many N per radian.
struct SliceBlock {
    Vec2 centre{0, 0}; // of its mass
    double weight = 0;
    double push = 0; // horizontal load towards +x at push_height
    double push_height = 0;
    double sway = 0;                      // horizontal load for each 1 of the load factor...
    std::optional<double> sway_height;    // ...at this height; none: at the centre
    double hoop_bottom = 0, hoop_top = 0; // heights between which hoop compression may act
    double hoop_limit = 0;                // greatest hoop compression, N; 0: no closed ring
    double tie_height = 0;
    double tie_limit = 0; // greatest tension of a hoop of wire at tie_height, N
};

/// Frame: x away from the room, z up, metres. joints.size() == blocks.size() + 1; joints.front() is
/// ignored where the slice starts free, as a wall does at its top.
struct Slice {
    std::vector<SliceBlock> blocks;
    std::vector<SliceJoint> joints;
    bool free_start = false;
};

/// The force in a joint, on the block before it by the block after it.
struct JointThrust {
    double normal = 0; // compression
    double shear = 0;  // towards the outer end
    double offset = 0; // of its point of action from the middle of the joint, towards the outer end
    double reach = 0;  // that offset as a share of the half contact: 1 at its ends
    Vec2 force{0, 0};  // N per metre or per radian
    Vec2 point{0, 0};  // where it acts
    double thrust() const {
        return -force.x();
    } // horizontal, positive where the slice pushes apart
};

/// One state of equilibrium in which no joint is pulled and none slides.
struct ThrustLine {
    bool stands = false;             // false: there is none, all else is empty
    bool undecided = false;          // the solver gave up: whether there is one is not known
    std::vector<JointThrust> joints; // of a free start: zeros
    std::vector<double> hoops;       // by block, compression, N
    std::vector<double> ties;        // by block, tension, N
    double load_factor = 0;
};

/// Assumptions of all functions below (Heyman, The Stone Skeleton, 1966): blocks are rigid, their
/// strength is without limit, joints carry no tension. By the safe theorem any such state shows
/// that the slice can stand. Preconditions: weights >= 0 and not all 0, contacts longer than 0.

/// The states of least and greatest horizontal thrust in a joint. `share`: the thrust keeps within
/// this part of every contact, about its middle; 1: anywhere in it. No joint or ring is pressed
/// with more than 1000 times the whole load: a flat arch between abutments that do not give could
/// be, and a ring on a base that does not slide. Semicircular arch of t/R 0.1075, weight gamma:
/// 0.6209 gamma R t either way (Milankovitch 1907).
ThrustLine least_thrust(const Slice& slice, int joint, double share = 1);
ThrustLine greatest_thrust(const Slice& slice, int joint, double share = 1);

/// The state whose greatest reach is least; of several, the one whose rings and ties carry least.
struct CentredThrust {
    ThrustLine line;  // stands where there is any state of equilibrium without tension, even if its
    double share = 0; // thrust leaves the contacts: then share > 1
    /// The geometric factor of safety: by how much the contacts could shrink. 0 where nothing
    /// helps.
    double safety() const { return line.stands ? 1 / share : 0; }
};
CentredThrust centred_thrust(const Slice& slice);
/// The same in half the time, its rings and ties carrying what comes: where the share alone is
/// asked for.
CentredThrust centred_share(const Slice& slice);

/// The state that needs the least friction, as if each joint but those of friction 0 had any; of
/// several, the one whose rings and ties carry least.
struct LeastFriction {
    ThrustLine line;
    double friction = 0; // the greatest |shear| / normal in it
};
LeastFriction least_friction(const Slice& slice);
LeastFriction friction_needed(const Slice& slice); // the same in half the time, as centred_share

/// The state of the greatest load factor on `sway`; with sway = weight that is the horizontal
/// acceleration in g that the slice bears. stands = false where it does not stand at factor 0;
/// load_factor = unlimited (and no joints) where sway cannot overturn it.
ThrustLine greatest_sway(const Slice& slice);

/// How a slice that cannot stand moves: a virtual motion of its blocks in which joints only open,
/// none closes, and the loads do work.
struct BlockMotion {
    Vec2 shift{0, 0}; // of the block's centre, m
    double turn = 0;  // anticlockwise, radians
};
struct Mechanism {
    std::vector<BlockMotion> blocks; // scaled so that the greatest shift is 1 m
    double work = 0;                 // of the loads, > 0, less what hoops and ties can take up
};
/// Empty (no blocks) where it can stand.
Mechanism collapse_mechanism(const Slice& slice);

} // namespace coilwright
