// A buttress that takes a dome's thrust down to the ground.
#pragma once

#include "geometry/plan/buttress_form.hpp"
#include "geometry/statics/dome_slice.hpp"

namespace coilwright {

/// What reaches the pier from the dome over its part of the circle, N.
struct DomePush {
    double thrust = 0;   // outward, horizontal
    double height = 0;   // above the floor, where it acts
    double vertical = 0; // weight that comes down with it
    double radius = 0;   // from the pole, where that acts
};

/// Weight, N, and the distance of its centre from the pole, of a pier outside the dome's rings.
struct PierMass {
    double weight = 0;
    double centre = 0;
};
/// By course: the plan between the ring's outside (a circle) and the pier's outer plane, |y| <=
/// half_width, of area 2 b X - (b sqrt(r2 - b2) + r2 asin(b/r)), times the share of it that stadium
/// tubes fill. Precondition: half_width < the rings' outside radius.
PierMass pier_mass(const Design& design, const DomeForm& dome, const ButtressForm& pier);

struct PierStability {
    PierMass mass;
    double toe = 0;         // from the pole: outer end of the pier's flat at the bottom
    double sliding = 0;     // friction x weights / thrust
    double overturning = 0; // moment of the weights about the toe / moment of the thrust
};
/// About the bottom of course 1; the soil's help is left out. Pier 20 kN with its centre 0.5 m
/// inside the toe, 30 kN of dome 1 m inside it, a thrust of 8 kN 2 m above the bottom: overturning
/// 40/16 = 2.5, sliding at friction 0.4: 2.5. Both unlimited without thrust.
PierStability pier_stability(const Design& design, const DomeForm& dome, const ButtressForm& pier,
                             const DomePush& push);

} // namespace coilwright
