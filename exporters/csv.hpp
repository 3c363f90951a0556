// Fields of CSV files (RFC 4180).
#pragma once

#include <string>
#include <vector>

namespace coilwright {

/// A field, quoted where it must be. A text that a spreadsheet would take for a formula gets an
/// apostrophe before it.
std::string csv_field(const std::string& text);
/// A row of fields with its line end, CR LF.
std::string csv_row(const std::vector<std::string>& cells);

} // namespace coilwright
