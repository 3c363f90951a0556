// Files of the project that tests read.
#pragma once

#include <string>

namespace coilwright::testing {

/// The text of models/NAME.toml.
std::string whole_building_text(const std::string& name);

} // namespace coilwright::testing
