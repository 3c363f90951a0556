// The plaster on a building's wall: its face, offset from the wall's along the true normal.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/building_shell.hpp"

namespace coilwright {

/// Thickness of the coats, metres, and the height at which the outside one ends.
struct PlasterCoats {
    double inside = 0, outside = 0;
    double ground = 0;
};

/// Faces of the plaster, looking away from the wall; open surfaces. `inside` covers the walls of
/// rooms from the floor up, `outside` all others from the ground up; `reveals`, of the inside
/// thickness, line the holes of openings and their sills, but no threshold on the floor.
struct PlasterFaces {
    Mesh inside, outside, reveals;
};

/// From a shell in the frame of its building. Every vertex lies the coat's thickness from the true
/// surface of its wall, along that surface's normal; along an edge that stands out two coats meet
/// at the thickness of each, in a hollow edge each runs on behind the other's face. A coat without
/// thickness has no face. Precondition: the shell is of this building and has no fault.
PlasterFaces plaster_faces(const BuildingShell& shell, const BuildingForm& building,
                           const PlasterCoats& coats);

} // namespace coilwright
