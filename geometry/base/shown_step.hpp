// The finest step that lengths are written in for people.
#pragma once

#include "geometry/base/length.hpp"

namespace coilwright {

/// 1/8 in or 1 mm, in metres.
constexpr double shown_step(DisplayUnit unit) {
    return unit == DisplayUnit::feet ? metres_per_inch / 8 : 0.001;
}

} // namespace coilwright
