#include "geometry/statics/buttress_stability.hpp"

#include "geometry/base/quantity.hpp"
#include "geometry/plan/section.hpp"
#include "geometry/statics/materials.hpp"

#include <cmath>

namespace coilwright {

PierMass pier_mass(const Design& design, const DomeForm& dome, const ButtressForm& pier) {
    const double b = pier.half_width, t = dome.course_height;
    const double filled = stadium_area(dome.width, t) / (dome.width * t);
    double mass = 0, moment = 0;
    for (int n = 1; n <= pier.last_course; ++n) {
        const double z = dome.course_middle(n);
        const double r = outside_radius(dome, z), out = outer_face(pier, z);
        const double under = b * std::sqrt(r * r - b * b) + r * r * std::asin(b / r);
        const double area = 2 * b * out - under;
        const double first = b * (out * out - r * r) + b * b * b / 3; // integral of x over it
        const double density = fill_density(design, n).value * filled * t;
        mass += density * area;
        moment += density * first;
    }
    return {standard_gravity * mass, mass > 0 ? moment / mass : 0};
}

PierStability pier_stability(const Design& design, const DomeForm& dome, const ButtressForm& pier,
                             const DomePush& push) {
    PierStability result;
    result.mass = pier_mass(design, dome, pier);
    const double edge = design.course.edge == TubeEdge::round ? dome.course_height / 2 : 0;
    result.toe = outer_face(pier, dome.course_middle(1)) - edge;
    result.sliding = result.overturning = unlimited;
    if (push.thrust <= 0)
        return result;
    const double weights = result.mass.weight + push.vertical;
    const double stands = result.mass.weight * (result.toe - result.mass.centre) +
                          push.vertical * (result.toe - push.radius);
    result.sliding = design.ground.friction * weights / push.thrust;
    result.overturning = stands / (push.thrust * (push.height - dome.course_bottom(1)));
    return result;
}

} // namespace coilwright
