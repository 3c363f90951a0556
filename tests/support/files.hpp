// Files of the project that tests read.
#pragma once

#include <string>

namespace coilwright::testing {

/// The text of tests/plan/whole_buildings/NAME.toml.
std::string whole_building_text(const std::string& name);

} // namespace coilwright::testing
