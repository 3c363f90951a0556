// Large buildings. The home of the figures: four domes, two tunnels, eight buttresses,
// twelve openings.
#pragma once

#include "geometry/design/design.hpp"

namespace coilwright::testing {

/// A dome of 5 m with a smaller one in open plan to the east, one whose ring stops against it to
/// the west, one with a skylight to the north at the end of a tunnel, and a porch to the south.
Design home_design();

/// The home without its kept wall and its niche, its link under a pointed vault: what the judges of
/// the shell, plain Booleans, can do (CGAL 5.5 trips over a level crown).
Design home_for_booleans();

/// Domes of 3.8 m in a square, each linked to the next by tunnels, with two windows and two
/// buttresses. `vary`: how far (0 to 1) heights and widths differ from one to the next; at 0 all
/// are alike. All is one part.
Design village_design(int domes, double vary);

} // namespace coilwright::testing
