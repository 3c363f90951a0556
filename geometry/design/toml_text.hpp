// From text to a TOML table, with the guards that keep hostile text cheap.
#pragma once

#include "geometry/base/diagnostic.hpp"

#include <toml++/toml.h>

#include <string_view>
#include <vector>

namespace coilwright {

inline constexpr std::size_t most_design_bytes = 1 << 20;
inline constexpr int most_nesting = 16;

/// The table of a text, or what keeps it from being one.
struct ParsedToml {
    toml::table table;
    std::vector<Diagnostic> faults;
};

/// Refuses, before parsing, text over 1 MiB, that is not UTF-8, that holds a NUL byte, or that
/// nests brackets and dotted names more than 16 deep. Text that is not TOML gives one diagnostic,
/// or one for each line whose quotes are those of a phone (typing_slips.hpp).
ParsedToml parse_toml(std::string_view text);

} // namespace coilwright
