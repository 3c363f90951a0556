// A design that uses every table and nearly every key; an invented place.
#pragma once

#include "geometry/design/read_design.hpp"

#include <string>

namespace coilwright {

extern const std::string whole_design;

/// The text with its first occurrence of a part replaced. Precondition: the part occurs.
std::string replaced(std::string text, const std::string& part, const std::string& with);

/// All codes of a reading, in order: "missing-key unknown-key".
std::string codes_of(const DesignReading& reading);

} // namespace coilwright
