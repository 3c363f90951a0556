// How wide a trench is beside what stands in it.
#pragma once

#include "geometry/design/design.hpp"

namespace coilwright {

/// How much wider than its footing a trench is, both sides together: 6 in, or what the stated width
/// leaves beside a footing of one tube of a tamped width, never less than 0. A footing of several
/// tubes side by side keeps that room: a stated 21 in and a tube of 15 in give a pier of two tubes
/// 36 in.
double trench_room(const Trench& trench, double tube);

} // namespace coilwright
