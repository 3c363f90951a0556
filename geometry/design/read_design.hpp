// From the text of a design file to a Design, with every fault found on the way.
#pragma once

#include "geometry/design/design.hpp"

#include <string_view>
#include <vector>

namespace coilwright {

/// A design and what is wrong with it. With diagnostics the design is only good for finding
/// further faults (elements with `sound` false are skipped); it must not be laid.
struct DesignReading {
    Design design;
    std::vector<Diagnostic> diagnostics; // in the order of the file
};

/// Reads and validates a design text (TOML 1.0, UTF-8, at most 1 MiB, nested at most 16 deep).
/// Text that is not TOML gives the one diagnostic "not-toml". All other faults are found at once:
/// unknown and missing keys, wrong types and units, values out of range, contradictions, ids that
/// are not `[a-z][a-z0-9_-]*` of at most 12 characters or stand twice, references to nothing.
/// Faults that need the laid building (an opening too wide at its height) are found by
/// check_layout (geometry/plan/check_layout.hpp).
DesignReading read_design(std::string_view text);

} // namespace coilwright
