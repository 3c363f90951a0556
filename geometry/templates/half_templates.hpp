// The curves of heads, strips and boards as they are printed at full size: half of what is
// symmetric.
#pragma once

#include "geometry/templates/form_set.hpp"

namespace coilwright {

/// The part of an outline with x >= 0 and y >= `above`, as paths.
std::vector<Outline> right_half(const Outline& outline, double above);

/// One view for the head of each kind of form that has a curve, one for its strip, one for each
/// piece of board. Square heads have none: their sizes stand in the list.
std::vector<View> half_templates(const FormSet& set);

} // namespace coilwright
