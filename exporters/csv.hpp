// Fields of CSV files (RFC 4180).
#pragma once

#include <string>

namespace coilwright {

/// A field, quoted where it must be. A text that a spreadsheet would take for a formula gets an
/// apostrophe before it.
std::string csv_field(const std::string& text);

} // namespace coilwright
