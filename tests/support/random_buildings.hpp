// Seeded random buildings of several domes, tunnels, buttresses and openings.
#pragma once

#include "geometry/design/design.hpp"

#include <cstdint>

namespace coilwright::testing {

/// One to `most_domes` domes, each but the first joined to an earlier one (open plan or one wall
/// kept), linked to it by a tunnel, or apart; porches with open ends or end walls, buttresses,
/// openings and niches in all of them, second tubes and wythes. Elements that the layout check
/// refuses are mostly left out again, so that most of the buildings can be built; the rest must be
/// refused. Turned and moved at random.
Design random_building(std::uint64_t seed, int most_domes = 6);

/// Gives a third of a building's openings in domes a plumb reveal, where the layout check lets
/// them.
Design with_reveals(Design design, std::uint64_t seed);

/// Lays arched heads as fans, gives square ones lintels and domes sleeves, each where the layout
/// check lets it.
Design with_fans_lintels_and_sleeves(Design design, std::uint64_t seed);

} // namespace coilwright::testing
