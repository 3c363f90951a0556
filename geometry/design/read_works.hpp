// From the text of a works file to Works and diagnostics.
#pragma once

#include "geometry/base/diagnostic.hpp"
#include "geometry/design/works.hpp"

#include <string_view>
#include <vector>

namespace coilwright {

struct WorksReading {
    Works works;
    std::vector<Diagnostic> diagnostics; // in the order of the file
};

/// Reads and validates a works file (docs/reference/works-file.md) under the rules of read_design:
/// all faults at once, each with its place and a value that would work. What the file leaves out
/// stays as in default_works().
WorksReading read_works(std::string_view text);

/// A day of the calendar, "2027-04-05", 1900 to 2199; nothing where it is none.
std::optional<Date> read_date(std::string_view text);

} // namespace coilwright
