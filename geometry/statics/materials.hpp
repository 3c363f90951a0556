// What the statics takes a building to be made of: the design's own values, or defaults that say
// so.
#pragma once

#include "geometry/design/design.hpp"

#include <string>

namespace coilwright {

/// A value and where it comes from. `stated`: the design gives it; else a default that a person
/// must check, with its standing in `source`.
struct MaterialValue {
    double value = 0;
    bool stated = false;
    std::string source;
};

/// The fill of course n: the [fill.*] whose `courses` hold n, else the one without `courses`;
/// nullptr where there is none.
const Fill* fill_of_course(const Design& design, int n);

/// Density of the fill of course n in the wall, kg/m3: `density`, else `dry_density`, else 1762
/// (110 pcf; a judgement without source).
MaterialValue fill_density(const Design& design, int n);

/// Strength in compression, Pa: `strength`, else 0.297 MPa, the weakest of the published prisms
/// (sand-filled, 43.06 psi: Dunbar and Wipplinger 2006).
MaterialValue fill_strength(const Design& design, int n);

/// Density of earth or lime plaster, 1700 kg/m3 (a judgement without source).
MaterialValue plaster_density();

/// Whether the ground outside stands more than a course above the floor, so that it pushes the
/// wall, and whether the design says enough of it ([ground] unit_weight and friction_angle) to
/// reckon that. A bank that is not known leaves sliding and overturning unjudged.
bool bank_against_wall(const Design& design);
bool bank_known(const Design& design);
/// Pressure of earth at rest at a depth, Pa: (1 - sin phi) x unit weight x depth (Jaky 1944; from
/// memory). 18 kN/m3, 30 degrees, 1 m -> 9 kPa. Precondition: bank_known.
double bank_pressure(const Design& design, double depth);

/// What the wire of one joint can pull around a ring, N: strands x breaking x joint_factor, 0
/// unless `hoop_tension`. Strands default to 2, or 1 where the tube lies under 12 in flat. 2 x
/// 4225.8 N x 0.5
/// -> 4225.8 N.
double wire_tension(const Design& design, const TubeType& tube);

} // namespace coilwright
