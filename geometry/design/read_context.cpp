#include "geometry/design/read_context.hpp"

#include "geometry/base/utf8.hpp"

#include <algorithm>
#include <utility>

namespace coilwright {

bool is_id(std::string_view text) {
    constexpr std::size_t longest_id = 12;
    if (text.empty() || text.size() > longest_id || text == "neither")
        return false;
    if (text.front() < 'a' || text.front() > 'z')
        return false;
    return std::all_of(text.begin(), text.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_';
    });
}

std::string element_path(std::string_view section, std::string_view id) {
    constexpr std::size_t longest_shown_id = 40;
    return std::string(section) + "." + shown_text(id, longest_shown_id);
}

void ReadContext::add(Diagnostic diagnostic) {
    // A key that is like no other changes nothing; one that may be a misspelt one leaves its
    // element without a value that the person gave.
    if (diagnostic.code != "unknown-key" || diagnostic.hint.rfind("did you mean", 0) == 0)
        faulty_.insert(diagnostic.subject);
    if (diagnostics_.size() < most_diagnostics)
        diagnostics_.push_back(std::move(diagnostic));
    else
        overflowed_ = true;
}

std::vector<Diagnostic> ReadContext::take_diagnostics() {
    if (overflowed_)
        diagnostics_.push_back(too_many_faults());
    put_in_order(diagnostics_);
    return std::move(diagnostics_);
}

bool ReadContext::is_faulty(const std::string& path) const {
    if (faulty_.count(path) > 0)
        return true;
    const std::string part = path + ".";
    const auto first = faulty_.lower_bound(part);
    return first != faulty_.end() && first->compare(0, part.size(), part) == 0;
}

std::string ReadContext::name_of_one(const std::vector<std::string>& sections) const {
    for (const DeclaredId& declared : ids)
        if (is_id(declared.id) &&
            std::find(sections.begin(), sections.end(), declared.section) != sections.end())
            return declared.id;
    return "north";
}

std::string ReadContext::names_of_two_domes(const std::string& first) const {
    std::vector<std::string> names;
    for (const DeclaredId& declared : ids)
        if (declared.section == "dome" && is_id(declared.id))
            names.insert(declared.id == first ? names.begin() : names.end(), declared.id);
    if (names.size() < 2)
        names = {"north", "south"};
    return "[\"" + names[0] + "\", \"" + names[1] + "\"]";
}

void ReadContext::note_place(const std::string& path, SourcePlace place) {
    places_.emplace(path, place);
}

faults::At ReadContext::at(const std::string& path) const {
    std::string known = path;
    for (;;) {
        const auto found = places_.find(known);
        if (found != places_.end())
            return {path, found->second};
        const auto dot = known.rfind('.');
        if (dot == std::string::npos)
            return {path, {1, 1}};
        known.resize(dot);
    }
}

} // namespace coilwright
