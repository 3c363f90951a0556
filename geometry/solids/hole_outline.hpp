// The outline of an opening, seen along its axis, as pieces of lines and arcs.
#pragma once

#include "geometry/plan/wall_form.hpp"
#include "geometry/solids/surface.hpp"

#include <vector>

namespace coilwright {

/// The outline of a hole in the plane across its axis: first coordinate to the left of someone at
/// the pole who faces it, second the height above the floor. Pieces run anticlockwise as seen from
/// the pole's far side: sill from right to left, left jamb up, head, right jamb down. An open
/// outline stands on the wall's foot and has no sill.
struct HoleOutline {
    std::vector<SectionPiece> pieces;
    bool open = false;
};

/// Outline of an opening in a wall whose foot is at height `foot`: open where the sill is not above
/// it. Pieces shorter than 10 um are left out (the head of a semicircular niche may start at its
/// sill). A door 0.8 wide and 2 high with a round head has four pieces, a circle two.
HoleOutline hole_outline(const OpeningForm& opening, double foot);

} // namespace coilwright
