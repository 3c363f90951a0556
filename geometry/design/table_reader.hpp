// Reads one table of the design file key by key: types, units and ranges, and which keys it knows.
// The only place, with toml_text and read_list, that touches the TOML library.
#pragma once

#include "geometry/design/read_context.hpp"

#include <toml++/toml.h>

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace coilwright {

enum class Need { may, must };

/// A key that measures something: its least and greatest value and one that works, in SI.
struct MeasureKey {
    std::string_view name;
    double low, high, example;
    std::string_view typed = {}; // the whole value as typed, where it is more than one measure
    double usual = 0; // length: a bare number beyond it may have lost its unit; 0: only over `high`
};

/// A length over `usual` is taken with its unit, and as a bare number only where no smaller unit
/// would make it ordinary.
constexpr MeasureKey usual_length(std::string_view name, double low, double usual, double high,
                                  double example) {
    return {name, low, high, example, {}, usual};
}

template <typename Value>
using Choices = std::initializer_list<std::pair<std::string_view, Value>>;

/// What a TOML value is, as a message says it: "true", "the text \"5 in\"", "an array".
std::string found_text(const toml::node& node);
SourcePlace place_of(const toml::node& node);

/// A value as a measure; none, and a diagnostic, where it is not one or out of range.
std::optional<double> read_measure_value(const toml::node& node, const MeasureKey& key,
                                         Measure measure, const faults::At& at,
                                         ReadContext& context);

class TableReader {
public:
    TableReader(const toml::table& table, std::string path, SourcePlace place,
                ReadContext& context);

    const std::string& path() const { return path_; }
    SourcePlace place() const { return place_; }
    ReadContext& context() const { return *context_; }
    bool has(std::string_view key) const;
    /// Path and place of the value of a key; the place of the table where it is left out.
    faults::At at(std::string_view key) const;
    SourcePlace place_of_key(std::string_view key) const { return at(key).place; }

    // Each reader below marks its key as known. It gives nothing where the key is left out (with a
    // diagnostic if it must stand) or faulty (with a diagnostic).
    std::optional<double> measure(const MeasureKey& key, Measure measure, Need need = Need::may);
    std::optional<double> length(const MeasureKey& key, Need need = Need::may);
    /// A length, or "fit", which sets `fit`.
    std::optional<double> length_or_fit(const MeasureKey& key, bool& fit, Need need = Need::may);
    /// A number of degrees clockwise from north, -360 to 360.
    std::optional<double> bearing(std::string_view key, Need need = Need::may);
    std::optional<int> whole(std::string_view key, int low, int high, int example,
                             Need need = Need::may);
    std::optional<bool> truth(std::string_view key, Need need = Need::may);
    /// A printable text of 1 to `most` characters.
    std::optional<std::string> text(std::string_view key, std::size_t most,
                                    std::string_view example, Need need = Need::may);
    template <typename Value>
    std::optional<Value> choice(std::string_view key, Choices<Value> choices,
                                Need need = Need::may) {
        std::vector<std::string> words;
        for (const auto& [word, value] : choices)
            words.emplace_back(word);
        const auto index = word_index(key, words, need);
        if (!index)
            return std::nullopt;
        return (choices.begin() + *index)->second;
    }
    /// The id of an element of one of the sections; looked up when all is read.
    std::optional<std::string> reference(std::string_view key, std::vector<std::string> sections,
                                         Need need = Need::may);
    std::optional<TableReader> table(std::string_view key, std::string_view example,
                                     Need need = Need::may);
    /// A table or text or number, whatever stands there; marks the key.
    const toml::node* node(std::string_view key, std::string_view allowed, std::string_view example,
                           Need need = Need::may);
    const toml::array* array(std::string_view key, std::string_view allowed,
                             std::string_view example, Need need = Need::may);

    /// The tables in this one with their names, at most 200, in the order of their names.
    std::vector<std::pair<std::string, TableReader>> named_tables(const std::string& section);
    /// Whether a key is left out and an unknown key of the table looks like it. Call it when all
    /// readers have marked their keys.
    bool is_misspelt(std::string_view key) const;
    /// A diagnostic for every key that no reader has marked and for every one that must stand.
    void finish();
    /// The same for the root.
    void finish_root();

private:
    struct KnownKey {
        std::string name, example;
    };

    const toml::node* find(std::string_view key, std::string example);
    void report_missing(std::string_view key, const std::string& allowed,
                        const std::string& example);
    /// A text under the key; nullptr, told, where it is left out and must stand or is none.
    const toml::node* string_node(std::string_view key, const std::string& allowed,
                                  const std::string& typed, Need need);
    void report_missing_keys();
    std::optional<std::ptrdiff_t> word_index(std::string_view key,
                                             const std::vector<std::string>& words, Need need);
    std::string path_of(std::string_view key) const;
    std::vector<std::pair<std::string, SourcePlace>> unknown_keys() const;
    std::vector<std::string> known_names() const;

    const toml::table* table_;
    std::string path_; // empty: the root
    SourcePlace place_;
    ReadContext* context_;
    std::vector<KnownKey> known_;
    std::vector<std::pair<std::string, Diagnostic>> missing_; // key left out, what to say of it
};

/// Assigns a value that was read and leaves the default where it was not: whether it was.
template <typename Field, typename Value>
bool set(Field& field, const std::optional<Value>& value) {
    if (value)
        field = *value;
    return value.has_value();
}

} // namespace coilwright
