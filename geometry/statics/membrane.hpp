// Membrane forces: what a thin shell of this shape would carry by forces in its surface alone.
#pragma once

#include "geometry/plan/wall_form.hpp"
#include "geometry/statics/dome_slice.hpp"

#include <optional>
#include <vector>

namespace coilwright {

/// N per metre of section, compression positive.
struct MembraneForces {
    double meridional = 0; // along the profile
    double hoop = 0;       // around the ring
};

/// Sphere of radius R (middle surface), weight q per m2 of surface, at phi radians from the crown:
/// qR/(1 + cos phi) and qR(cos phi - 1/(1 + cos phi)) (Timoshenko and Woinowsky-Krieger, Theory of
/// Plates and Shells, 1959, ch. 14). q 120, R 159, phi 16 deg -> 9728.43, 8612.44.
MembraneForces spherical_membrane(double skin_weight, double radius, double phi);
/// Cone, apex up, at a slant distance from the apex: qs/(2 cos a), qs sin2 a/cos a (Fluegge,
/// Stresses in Shells, 1960). q 7.2, s 5, a 30 deg -> 20.7846, 10.3923.
MembraneForces conical_membrane(double skin_weight, double slant, double half_angle);

/// A shell of revolution on a profile, `offset` outside it all round: its middle surface lies at
/// half_width(profile, y) + offset from the pole. It ends at `top` above the springline, under a
/// ring load there, N per metre of that ring.
struct MembraneShell {
    Profile profile;
    double offset = 0;
    double top = 0; // rise: closed (then offset is 0, or what is left open counts as a ring)
    double skin_weight = 0;
    double ring_load = 0;
};

/// At a height above the springline, below `top`, under its own weight: with V the vertical load
/// per radian above, N_phi = V sqrt(1 + x'2)/r and N_theta = q r |x'| + V x''/sqrt(1 + x'2), from
/// the balance of a ring sector. Zone of a sphere from r 5 to r 10 at 60 deg, ring load 2, no
/// weight: 4.6188 at its top, 1.1547 at its base.
MembraneForces membrane_forces(const MembraneShell& shell, double height);

/// Where going down the hoop force turns from compression to tension first, above the springline;
/// none where it does not. Hemisphere under its own weight: at R cos 51.8273 deg = 0.618034 R.
std::optional<double> hoop_turns_at(const MembraneShell& shell);

/// The same for a laid dome, by the true weights of its courses: the membrane lies along the
/// profile.
struct CourseMembrane {
    int course = 0;
    MembraneForces forces; // at the joint under it; hoop: of the course
    double thrust = 0;     // horizontal, at that joint, N per radian
};
/// Of the ring courses that stand above the springline, from the bottom up.
std::vector<CourseMembrane> dome_membrane(const DomeForm& dome,
                                          const std::vector<WallCourse>& courses);

} // namespace coilwright
