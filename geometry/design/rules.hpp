// What the checks hold a building against: numbers, each with its source and standing. Built-in
// values in geometry/design/rules/*.toml, one file a source; a design overrides or adds to them in
// [rules.NAME].
#pragma once

#include <map>
#include <string>

namespace coilwright {

/// How far the source of a value was looked at.
enum class Standing { read, memory, reckoned, practice, judgement, stated };
/// "read", "memory", "reckoned", "practice", "judgement", "stated" (by the design).
std::string word(Standing standing);

/// One number of a rule, in SI.
struct Limit {
    double value = 0;
    std::string unit;                     // "m", "m2", "deg"; empty for a number or a count
    std::string source, edition, section; // edition and section may be empty
    Standing standing = Standing::practice;
};

/// By rule and key: "egress-door.clear_width".
using Limits = std::map<std::string, Limit>;

/// The limit of that name; nullptr where neither the built-in rules nor the design set it.
const Limit* find_limit(const Limits& limits, const std::string& name);

/// The source as a finding names it: "International Residential Code, 2018 and 2021, R311.2", with
/// "(from memory)" behind it where it was not read again.
std::string source_text(const Limit& limit);

} // namespace coilwright
