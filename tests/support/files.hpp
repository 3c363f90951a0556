// Files of the project that tests read.
#pragma once

#include <string>
#include <vector>

namespace coilwright::testing {

/// The text of models/NAME.toml.
std::string whole_building_text(const std::string& name);

/// The designs in models: "grain-store.toml", in the order of their names.
std::vector<std::string> demo_files();

} // namespace coilwright::testing
