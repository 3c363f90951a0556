// What the layout check says of a design, for its tests.
#pragma once

#include <string>
#include <vector>

namespace coilwright {
struct Design;
}

namespace coilwright::testing {

using Codes = std::vector<std::string>;

/// Codes of the faults in their order; each must have its words, what is allowed and an example.
Codes codes(const Design& design);

} // namespace coilwright::testing
