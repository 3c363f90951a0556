// What is wrong with the input: one diagnostic per fault, with its place in the design file.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace coilwright {

/// A place in the design text. Lines and columns (in characters, not bytes) count from 1;
/// line 0 means the file as a whole.
struct SourcePlace {
    int line = 0;
    int column = 0;
};

/// One fault in the design. Every text is a plain sentence or phrase without a final line break.
struct Diagnostic {
    std::string code; // stable, kebab-case: "unknown-key", "opening-too-wide"
    SourcePlace place;
    std::string subject; // the element or key at fault: "opening.door.width"
    std::string message; // what was found, in one sentence
    std::string allowed; // what is allowed
    std::string example; // a value that would work, as it would be typed: `width = "32 in"`
    std::string hint;    // "did you mean `width`?", or empty
};

/// Sorts by line, column and code, and drops exact repeats.
void put_in_order(std::vector<Diagnostic>& diagnostics);

/// No more are listed: a file with more is hardly the one that was meant.
inline constexpr std::size_t most_diagnostics = 500;

/// The one that says so, with the code "too-many-faults".
Diagnostic too_many_faults();

/// The first of them in the order of the file, and the one that says so where there were more.
void limit(std::vector<Diagnostic>& diagnostics);

/// The diagnostic as a person reads it, several lines, no final line break:
/// `FILE:LINE:COLUMN: message [code]`, the source line with a caret under the place (tabs and wide
/// characters kept in line), what is allowed, an example, the hint.
/// `source` is the whole design text; long lines are clipped around the place, and what could
/// steer a terminal or reorder the text is shown as U+FFFD.
std::string diagnostic_text(const Diagnostic& diagnostic, const std::string& file_name,
                            const std::string& source);

} // namespace coilwright
