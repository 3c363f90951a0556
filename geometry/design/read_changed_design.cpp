#include "geometry/design/read_changed_design.hpp"

#include "geometry/design/faults.hpp"
#include "geometry/design/read_parsed_design.hpp"

#include <charconv>

namespace coilwright {

namespace {

std::vector<std::string> steps_of(const std::string& path) {
    std::vector<std::string> steps{""};
    for (const char c : path) {
        if (c == '.')
            steps.emplace_back();
        else
            steps.back() += c;
    }
    return steps;
}

void put(toml::table& table, const std::string& key, const std::string& value) {
    const char *begin = value.data(), *end = begin + value.size();
    std::int64_t whole = 0;
    double number = 0;
    if (value == "true" || value == "false")
        table.insert_or_assign(key, value == "true");
    else if (auto [rest, error] = std::from_chars(begin, end, whole);
             error == std::errc() && rest == end)
        table.insert_or_assign(key, whole);
    else if (auto [tail, fault] = std::from_chars(begin, end, number);
             fault == std::errc() && tail == end)
        table.insert_or_assign(key, number);
    else
        table.insert_or_assign(key, value);
}

/// The fault of a change, if it has one.
std::optional<Diagnostic> apply(toml::table& root, const KeyChange& change) {
    const std::vector<std::string> steps = steps_of(change.path);
    toml::table* table = &root;
    std::string so_far;
    for (std::size_t i = 0; i + 1 < steps.size(); ++i) {
        so_far += (so_far.empty() ? "" : ".") + steps[i];
        toml::node* next = table->get(steps[i]);
        if (!next) {
            if (change.take_out)
                return std::nullopt;
            table->insert(steps[i], toml::table{});
            next = table->get(steps[i]);
        }
        table = next->as_table();
        if (!table)
            return Diagnostic{"wrong-type",       {}, change.path, "`" + so_far + "` is no table.",
                              "a key in a table", "", ""};
    }
    if (change.take_out)
        table->erase(steps.back());
    else
        put(*table, steps.back(), change.value);
    return std::nullopt;
}

} // namespace

DesignReading read_changed_design(std::string_view text, const std::vector<KeyChange>& changes) {
    ParsedToml parsed = parse_toml(text);
    if (parsed.faults.empty())
        for (const KeyChange& change : changes)
            if (auto fault = apply(parsed.table, change)) {
                DesignReading reading;
                reading.diagnostics.push_back(std::move(*fault));
                return reading;
            }
    return read_parsed_design(parsed);
}

} // namespace coilwright
