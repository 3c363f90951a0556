#include "geometry/design/table_reader.hpp"

#include "geometry/base/nearest_word.hpp"
#include "geometry/base/utf8.hpp"
#include "geometry/design/forgotten_unit.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

constexpr std::size_t longest_shown_key = 40;
constexpr std::size_t most_elements = 200;

std::string quoted(std::string_view text) {
    return '"' + std::string(text) + '"';
}

std::string range_text(double low, double high, Measure measure, DisplayUnit unit) {
    return measure_text(low, measure, unit) + " to " + measure_text(high, measure, unit);
}

} // namespace

std::string found_text(const toml::node& node) {
    switch (node.type()) {
    case toml::node_type::table:
        return "a table";
    case toml::node_type::array:
        return "an array";
    case toml::node_type::string:
        return "the text " + quoted(shown_text(node.ref<std::string>()));
    case toml::node_type::integer:
        return std::to_string(node.ref<std::int64_t>());
    case toml::node_type::floating_point:
        return short_number(node.ref<double>());
    case toml::node_type::boolean:
        return node.ref<bool>() ? "true" : "false";
    default:
        return "a date or time";
    }
}

SourcePlace place_of(const toml::node& node) {
    const toml::source_position& begin = node.source().begin;
    return {static_cast<int>(begin.line), static_cast<int>(begin.column)};
}

std::optional<double> read_measure_value(const toml::node& node, const MeasureKey& key,
                                         Measure measure, const faults::At& at,
                                         ReadContext& context) {
    const DisplayUnit unit = context.unit;
    const std::string typed =
        key.typed.empty() ? typed_measure(key.example, measure, unit) : std::string(key.typed);
    double value = 0;
    bool is_bare = node.is_number() && takes_text(measure);
    if (node.is_string() && takes_text(measure)) {
        const std::string& text = node.ref<std::string>();
        const LengthReading reading = read_measure(text, measure, unit);
        if (!reading.fault.empty()) {
            context.add(faults::unreadable_measure(at, quoted(shown_text(text)), reading.fault,
                                                   ways_to_type(measure, unit), typed));
            return std::nullopt;
        }
        value = reading.value;
        is_bare = reading.bare;
    } else if (node.is_number() && takes_bare_number(measure)) {
        value = from_bare_number(node.value_or(0.0), measure, unit);
    } else {
        context.add(faults::wrong_type(at, found_text(node), ways_to_type(measure, unit), typed));
        return std::nullopt;
    }
    // Bounds are meant to be reached: a length within a micrometre of one counts as on it.
    const double slack = measure == Measure::length ? 1e-6 : 0;
    if (is_bare && !context.unit_is_known && std::isfinite(value))
        return value;
    const bool fits = std::isfinite(value) && value >= key.low - slack && value <= key.high + slack;
    const double usual = key.usual > 0 ? key.usual : key.high;
    if (fits && !(is_bare && std::abs(value) > usual + slack))
        return value;
    const std::string meant =
        is_bare && measure == Measure::length && std::isfinite(value)
            ? with_forgotten_unit(value / metres_of(1, unit), {key.low, usual, key.example}, unit)
            : std::string();
    if (fits && meant.empty())
        return value;
    if (fits)
        context.add(faults::forgotten_unit(at, found_text(node), measure_text(value, measure, unit),
                                           measure_text(usual, measure, unit), meant));
    else
        context.add(faults::out_of_range(
            at, found_text(node), range_text(key.low, key.high, measure, unit),
            meant.empty() || !key.typed.empty() ? typed : quoted(meant), meant));
    return std::nullopt;
}

TableReader::TableReader(const toml::table& table, std::string path, SourcePlace place,
                         ReadContext& context)
    : table_(&table), path_(std::move(path)), place_(place), context_(&context) {
    if (!path_.empty())
        context.note_place(path_, place);
}

std::string TableReader::path_of(std::string_view key) const {
    const std::string shown = shown_text(key, longest_shown_key);
    return path_.empty() ? shown : path_ + "." + shown;
}

bool TableReader::has(std::string_view key) const {
    return table_->contains(key);
}

faults::At TableReader::at(std::string_view key) const {
    const toml::node* node = table_->get(key);
    return {path_of(key), node ? coilwright::place_of(*node) : place_};
}

const toml::node* TableReader::find(std::string_view key, std::string example) {
    known_.push_back({std::string(key), std::move(example)});
    const toml::node* node = table_->get(key);
    if (node)
        context_->note_place(path_of(key), coilwright::place_of(*node));
    return node;
}

void TableReader::report_missing(std::string_view key, const std::string& allowed,
                                 const std::string& example) {
    missing_.emplace_back(key, faults::missing_key({path_of(key), place_}, allowed, example));
}

std::optional<double> TableReader::measure(const MeasureKey& key, Measure measure, Need need) {
    const std::string typed = typed_measure(key.example, measure, context_->unit);
    const toml::node* node = find(key.name, typed);
    if (node)
        return read_measure_value(*node, key, measure, at(key.name), *context_);
    if (need == Need::must)
        report_missing(key.name,
                       ways_to_type(measure, context_->unit) + "; " +
                           range_text(key.low, key.high, measure, context_->unit),
                       typed);
    return std::nullopt;
}

std::optional<double> TableReader::length(const MeasureKey& key, Need need) {
    return measure(key, Measure::length, need);
}

std::optional<double> TableReader::length_or_fit(const MeasureKey& key, bool& fit, Need need) {
    const toml::node* node = table_->get(key.name);
    fit = node && node->is_string() && node->ref<std::string>() == "fit";
    if (!fit)
        return length(key, need);
    find(key.name, typed_measure(key.example, Measure::length, context_->unit));
    return std::nullopt;
}

std::optional<double> TableReader::bearing(std::string_view key, Need need) {
    return measure({key, -360, 360, 150}, Measure::degrees, need);
}

std::optional<int> TableReader::whole(std::string_view key, int low, int high, int example,
                                      Need need) {
    const std::string typed = std::to_string(example);
    const std::string allowed =
        low == high ? std::to_string(low)
                    : "a whole number, " + std::to_string(low) + " to " + std::to_string(high);
    const toml::node* node = find(key, typed);
    if (!node) {
        if (need == Need::must)
            report_missing(key, allowed, typed);
        return std::nullopt;
    }
    if (!node->is_integer()) {
        context_->add(faults::wrong_type(at(key), found_text(*node), allowed, typed));
        return std::nullopt;
    }
    const std::int64_t value = node->ref<std::int64_t>();
    if (value < low || value > high) {
        context_->add(faults::out_of_range(at(key), found_text(*node), allowed, typed));
        return std::nullopt;
    }
    return static_cast<int>(value);
}

std::optional<bool> TableReader::truth(std::string_view key, Need need) {
    const toml::node* node = find(key, "true");
    if (node && node->is_boolean())
        return node->ref<bool>();
    if (node)
        context_->add(faults::wrong_type(at(key), found_text(*node), "true or false", "true"));
    else if (need == Need::must)
        report_missing(key, "true or false", "true");
    return std::nullopt;
}

const toml::node* TableReader::string_node(std::string_view key, const std::string& allowed,
                                           const std::string& typed, Need need) {
    const toml::node* node = find(key, typed);
    if (!node) {
        if (need == Need::must)
            report_missing(key, allowed, typed);
        return nullptr;
    }
    if (node->is_string())
        return node;
    context_->add(faults::wrong_type(at(key), found_text(*node), allowed, typed));
    return nullptr;
}

std::optional<std::string> TableReader::text(std::string_view key, std::size_t most,
                                             std::string_view example, Need need) {
    const std::string typed = quoted(example);
    const std::string allowed =
        "a text of 1 to " + std::to_string(most) + " printable characters on one line";
    const toml::node* node = string_node(key, allowed, typed, need);
    if (!node)
        return std::nullopt;
    const std::string& value = node->ref<std::string>();
    const bool blank = value.find_first_not_of(' ') == std::string::npos;
    if (blank || character_count(value) > most || shown_text(value, most) != value) {
        context_->add(faults::out_of_range(at(key), found_text(*node), allowed, typed));
        return std::nullopt;
    }
    return value;
}

std::optional<std::ptrdiff_t>
TableReader::word_index(std::string_view key, const std::vector<std::string>& words, Need need) {
    const std::string typed = quoted(words.front());
    const toml::node* node = string_node(key, faults::listed(words), typed, need);
    if (!node)
        return std::nullopt;
    const std::string& word = node->ref<std::string>();
    const auto found = std::find(words.begin(), words.end(), word);
    if (found == words.end()) {
        context_->add(faults::unknown_word(at(key), word, words));
        return std::nullopt;
    }
    return found - words.begin();
}

std::optional<std::string> TableReader::reference(std::string_view key,
                                                  std::vector<std::string> sections, Need need) {
    const std::string typed = quoted(context_->name_of_one(sections));
    std::string allowed = "the name of a";
    for (const std::string& section : sections)
        allowed += (section == sections.front() ? " [" : " or [") + section + ".NAME]";
    const toml::node* node = string_node(key, allowed, typed, need);
    if (!node)
        return std::nullopt;
    const std::string& id = node->ref<std::string>();
    context_->references.push_back({at(key), id, std::move(sections)});
    return id;
}

const toml::node* TableReader::node(std::string_view key, std::string_view allowed,
                                    std::string_view example, Need need) {
    const toml::node* node = find(key, std::string(example));
    if (!node && need == Need::must)
        report_missing(key, std::string(allowed), std::string(example));
    return node;
}

const toml::array* TableReader::array(std::string_view key, std::string_view allowed,
                                      std::string_view example, Need need) {
    const toml::node* found = node(key, allowed, example, need);
    if (!found || found->is_array())
        return found ? found->as_array() : nullptr;
    context_->add(faults::wrong_type(at(key), found_text(*found), std::string(allowed),
                                     std::string(example)));
    return nullptr;
}

std::optional<TableReader> TableReader::table(std::string_view key, std::string_view example,
                                              Need need) {
    const toml::node* found = node(key, "a table of keys", example, need);
    if (!found)
        return std::nullopt;
    if (!found->is_table()) {
        context_->add(faults::wrong_type(at(key), found_text(*found), "a table of keys",
                                         std::string(example)));
        return std::nullopt;
    }
    return TableReader(*found->as_table(), path_of(key), coilwright::place_of(*found), *context_);
}

std::vector<std::pair<std::string, TableReader>>
TableReader::named_tables(const std::string& section) {
    std::vector<std::pair<std::string, TableReader>> tables;
    const auto parent = table(section, "{ north = { } }");
    if (!parent)
        return tables;
    bool nameless = false;
    for (const auto& [key, node] : *parent->table_) {
        const faults::At at = parent->at(key.str());
        const SourcePlace key_place{static_cast<int>(key.source().begin.line),
                                    static_cast<int>(key.source().begin.column)};
        if (!node.is_table()) {
            // Someone forgot the name; one diagnostic for all keys of the table.
            if (!nameless)
                context_->add(faults::element_without_name({at.path, key_place}, section));
            nameless = true;
            continue;
        }
        if (tables.size() == most_elements) {
            context_->add(faults::too_many_elements(at, most_elements));
            break;
        }
        tables.emplace_back(std::string(key.str()),
                            TableReader(*node.as_table(), at.path, at.place, *context_));
    }
    return tables;
}

std::vector<std::pair<std::string, SourcePlace>> TableReader::unknown_keys() const {
    std::vector<std::pair<std::string, SourcePlace>> unknown;
    for (const auto& [key, node] : *table_) {
        const std::string_view name = key.str(); // clang 14 lets no lambda hold a bound name
        const bool is_known = std::any_of(known_.begin(), known_.end(), [&](const KnownKey& known) {
            return known.name == name;
        });
        if (!is_known)
            unknown.push_back({std::string(name),
                               {static_cast<int>(key.source().begin.line),
                                static_cast<int>(key.source().begin.column)}});
    }
    return unknown;
}

std::vector<std::string> TableReader::known_names() const {
    std::vector<std::string> names;
    for (const KnownKey& known : known_)
        names.push_back(known.name);
    return names;
}

bool TableReader::is_misspelt(std::string_view key) const {
    constexpr std::size_t most_looked_at = 50; // a table with more is no slip of the pen
    if (has(key))
        return false;
    const std::vector<std::string> known = known_names();
    const auto unknown = unknown_keys();
    for (std::size_t i = 0; i < unknown.size() && i < most_looked_at; ++i)
        if (nearest_word(unknown[i].first, known) == key)
            return true;
    return false;
}

void TableReader::report_missing_keys() {
    for (auto& [key, diagnostic] : missing_)
        if (!is_misspelt(key))
            context_->add(std::move(diagnostic));
    missing_.clear();
}

void TableReader::finish() {
    report_missing_keys();
    std::vector<std::string> examples;
    for (const KnownKey& known : known_)
        examples.push_back(known.example);
    for (const auto& [key, place] : unknown_keys()) {
        const bool was_full = context_->is_full();
        context_->add(faults::unknown_key({path_of(key), place}, known_names(), examples));
        if (was_full)
            break;
    }
}

void TableReader::finish_root() {
    report_missing_keys();
    for (const auto& [key, place] : unknown_keys()) {
        const bool was_full = context_->is_full();
        std::string child; // of [openings.win]
        if (const toml::table* table = table_->get_as<toml::table>(key))
            for (const auto& [name, node] : *table)
                if (node.is_table() && child.empty())
                    child = std::string(name.str());
        context_->add(faults::unknown_table({path_of(key), place}, known_names(), child));
        if (was_full)
            break;
    }
}

} // namespace coilwright
