// What keeps a text from being TOML when it was typed on a phone or in a word processor: curly
// quotes around texts, odd spaces, lengths without quotes, quotes left open.
#pragma once

#include "geometry/base/diagnostic.hpp"

#include <string_view>
#include <vector>

namespace coilwright {

/// One diagnostic for every line with such a slip, at its first one, with the line as it would
/// work: `width = “8 ft”` -> `width = "8 ft"`. Curly marks within straight quotes and in comments
/// are none. `failed`: the line at which the TOML reader stopped; only there a straight quote may
/// be closed by a curly one, or by none. Nothing where the text fails for another reason. At most
/// `most_diagnostics` and the one that says so. Precondition: the text is UTF-8.
std::vector<Diagnostic> typing_slips(std::string_view text, int failed);

} // namespace coilwright
