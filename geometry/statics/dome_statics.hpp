// All that limit analysis says of one finished dome.
#pragma once

#include "geometry/statics/joint_checks.hpp"
#include "geometry/statics/stages.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// One meridian of the dome, from its top to the ground.
struct StripStatics {
    std::string beside; // the opening, tunnel or dome that weakens it; empty: clear of all of them
    CentredThrust centred; // with as much friction as it wants
    LeastFriction friction;
    ThrustLine least, greatest;     // by the thrust on the ground, with the design's friction
    std::vector<JointCheck> joints; // of the centred line; empty where there is none
};

struct DomeStatics {
    std::string dome;
    std::vector<WallCourse> courses;
    std::optional<int>
        without_contact; // this course finds nothing to lie on: nothing below is filled
    std::vector<StripStatics> strips; // clear of openings first, then beside each, by id
    std::vector<PierCheck> piers;
    std::size_t worst = 0; // index of the strip of the greatest share
};

/// What of a strip is worked out; the rest stays empty.
struct StripParts {
    bool centred = true, friction = true;
    bool lines = true; // the thrusts, the joints, and which rings carry: what only drawings show
};

/// Openings break the rings of the courses that they cut, in every strip. Loads as said; wire
/// counts where the design counts it. About 3 ms a strip. Preconditions as dome_courses.
DomeStatics dome_statics(const Design& design, const BuildingForm& building, const DomeForm& dome,
                         const DomeLoads& loads = {}, const StripParts& parts = {});

/// The least outward thrust at the springline of a strip, N per radian, and where it acts: what the
/// stem, its buttresses and the ground must take where no ring does. stands = false where there is
/// no line.
ThrustLine springline_thrust(const std::vector<WallCourse>& courses, const DomeForm& dome,
                             const DomeSlice& what = {});

} // namespace coilwright
