// A plumb reveal: the jambs and the head of an opening in a leaning wall, built out.
#pragma once

#include "geometry/plan/buttress_form.hpp"

#include <optional>

namespace coilwright {

/// Where the wall's outside has leaned in by more than this, metres, a reveal starts: less shows no
/// face.
inline constexpr double least_reveal = 0.005;

/// Whether the head is one that courses close by themselves: curved, and laid against its form. No
/// niche has a reveal.
bool can_have_reveal(const OpeningForm& opening);

/// A reveal as a pier of its dome, on the opening's bearing, which the opening cuts as it cuts
/// every pier. It starts at the joint from which the wall's outside lies inside that of the base
/// ring, and reaches to that plane (on the ledge of a wider ring least_reveal beyond it): one tube
/// each side of the hole, following the head; between jambs below a higher sill the courses run
/// across; over the head they close by the rule of a vault's crown (tunnel_form.hpp). None where no
/// course that the opening cuts leans so far. Preconditions: the opening is in the dome and can
/// have one.
std::optional<ButtressForm> make_reveal(const OpeningForm& opening, const DomeForm& dome);

/// x(z) + w: half of its width over both jambs; past the apex by the cap rule. Round head a 0.4, w
/// 0.3 -> 0.7 up to the springing.
double reveal_half_width(const RevealForm& form, double z);

} // namespace coilwright
