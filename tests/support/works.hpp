// The works files of the demo designs.
#pragma once

#include "geometry/design/works.hpp"

#include <string>

namespace coilwright::testing {

/// models/NAME.works: "grain-store". Throws std::runtime_error with its first fault where it has
/// one.
Works demo_works(const std::string& name);

} // namespace coilwright::testing
