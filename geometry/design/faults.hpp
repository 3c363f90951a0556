// Every message of the reader of design files, one function a kind of fault, all texts in
// faults.cpp and contradictions.cpp. Codes are stable; docs/reference/diagnostics.md tells what
// each means.
#pragma once

#include "geometry/base/diagnostic.hpp"
#include "geometry/design/measure.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace coilwright::faults {

/// What is at fault: the path of the element or key ("opening.door.width") and its place.
struct At {
    std::string path;
    SourcePlace place;
    /// The last part of the path: "width".
    std::string key() const;
    /// The path without its last part, as a header: "[opening.door]"; "the file" at the top.
    std::string table() const;
};

/// With a capital in front and a full stop behind: "the file ..." -> "The file ...."
std::string as_sentence(std::string text);
/// "a, b, c".
std::string listed(const std::vector<std::string>& words);
/// `key = value` with the key of the path.
std::string assignment(const At& at, const std::string& typed);

// The text as a whole: each the only diagnostic of its file.
Diagnostic too_large(std::size_t bytes, std::size_t most);
Diagnostic not_utf8(SourcePlace place);
Diagnostic nul_byte(SourcePlace place);
Diagnostic too_deep(SourcePlace place, int most);
Diagnostic not_toml(SourcePlace place, std::string_view description);

// Lines as phones and word processors type them; `works` is the line as it would work.
Diagnostic curly_quotes(SourcePlace place, std::string_view mark, const std::string& works);
Diagnostic odd_space(SourcePlace place, const std::string& works);
Diagnostic bare_length(SourcePlace place, std::string_view found, const std::string& works);
Diagnostic inch_mark(SourcePlace place, const std::string& works);
Diagnostic open_quote(SourcePlace place, const std::string& works);

// Tables and keys.
/// `child`: the name of the first table in it, of [openings.win] "win"; empty if there is none.
Diagnostic unknown_table(const At& at, const std::vector<std::string>& known,
                         const std::string& child);
Diagnostic unknown_key(const At& at, const std::vector<std::string>& known,
                       const std::vector<std::string>& examples);
Diagnostic missing_table(const std::string& table, const std::string& why);
/// `at.place` is that of the table.
Diagnostic missing_key(const At& at, const std::string& allowed, const std::string& typed);
Diagnostic element_without_name(const At& at, const std::string& section);
Diagnostic too_many_elements(const At& at, int most);

// Values. `typed` is a value that works, as it is typed.
Diagnostic wrong_version(const At& at, const std::string& found);
Diagnostic wrong_type(const At& at, const std::string& found, const std::string& allowed,
                      const std::string& typed);
Diagnostic unreadable_measure(const At& at, const std::string& found, const std::string& fault,
                              const std::string& allowed, const std::string& typed);
/// `meant`: the number with the unit that was forgotten, "32 in"; empty where that is not it.
Diagnostic out_of_range(const At& at, const std::string& found, const std::string& allowed,
                        const std::string& typed, const std::string& meant = {});
/// A bare number within range, but beyond what is usual: `reads` is what it comes to, "20 ft 0 in".
Diagnostic forgotten_unit(const At& at, const std::string& found, const std::string& reads,
                          const std::string& usual, const std::string& meant);
Diagnostic unknown_word(const At& at, std::string_view found,
                        const std::vector<std::string>& words);

/// Of a table whose name is none of the known: [price.NAME]. `more`: what else may stand there.
Diagnostic unknown_name(const At& at, std::string_view found, const std::vector<std::string>& names,
                        const std::string& more);
/// Of a whole number that another element has already and only one may have; `free` is none's.
Diagnostic taken_number(const At& at, int value, const std::string& by, int free);

// Names.
Diagnostic bad_id(const At& at, std::string_view id);
/// Of a material named as another thing that the take-off buys.
Diagnostic reserved_id(const At& at, const std::string& id);
Diagnostic repeated_id(const At& at, const std::string& id, const std::string& other_path,
                       SourcePlace other);
Diagnostic unknown_reference(const At& at, std::string_view id,
                             const std::vector<std::string>& known,
                             const std::vector<std::string>& sections);
Diagnostic wrong_reference(const At& at, const std::string& message, const std::string& allowed,
                           const std::string& typed);

} // namespace coilwright::faults
