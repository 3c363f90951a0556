// The home of the figures: four domes, two tunnels, eight buttresses, twelve openings.
#pragma once

#include "geometry/design/design.hpp"

namespace coilwright::testing {

/// A dome of 5 m with a smaller one in open plan to the east, one whose ring stops against it to
/// the west, one with a skylight to the north at the end of a tunnel, and a porch to the south.
Design home_design();

} // namespace coilwright::testing
