// Lines along which the faces of a shell bend.
#pragma once

#include "geometry/solids/shell_curves.hpp"

namespace coilwright {

/// For every face the level lines at its kinks that its facets must not straddle, from curve to
/// curve or all round, where they keep clear of the curves that bound it; elsewhere points on the
/// kink and the refinement must do. Adds their vertices to the plan's mesh.
std::vector<std::vector<Chain>> shell_creases(const WallFaces& faces, double tolerance,
                                              ShellPlan& plan);

} // namespace coilwright
