// Of the design reader: from a parsed table on.
#pragma once

#include "geometry/design/read_design.hpp"
#include "geometry/design/toml_text.hpp"

namespace coilwright {

/// As read_design, of a text that is parsed.
DesignReading read_parsed_design(const ParsedToml& parsed);

} // namespace coilwright
