// "Did you mean": the known word that is nearest to a misspelt one.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace coilwright {

/// Fewest insertions, deletions, substitutions and swaps of neighbouring bytes that turn one word
/// into the other (optimal string alignment): "heigth", "height" -> 1. Cost grows as the product
/// of the lengths: keep both short.
int edit_distance(std::string_view a, std::string_view b);

/// The known word within a third of the longer word's length (at least 1) of `word`, upper and
/// lower case taken as equal, and '-', '_' and ' '; the first of equals. None where nothing is near
/// or `word` is longer than 40 bytes.
std::optional<std::string> nearest_word(std::string_view word,
                                        const std::vector<std::string>& known);

} // namespace coilwright
