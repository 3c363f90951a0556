// What the readers of all tables share while one design file is read.
#pragma once

#include "geometry/design/faults.hpp"

#include <map>
#include <set>
#include <string>
#include <vector>

namespace coilwright {

/// A key that names another element, to be looked up when all tables are read.
struct Reference {
    faults::At at;
    std::string id;
    std::vector<std::string> sections; // kinds of element that it may name: "dome"
};

/// An element that the file declares.
struct DeclaredId {
    std::string section; // "dome"
    std::string id;
    faults::At at;
};

/// Whether a name may stand in a table's header: `[a-z][a-z0-9_-]*`, at most 12 characters.
bool is_id(std::string_view text);
/// "dome.north", as paths write it also for a name that is no name.
std::string element_path(std::string_view section, std::string_view id);

class ReadContext {
public:
    DisplayUnit unit = DisplayUnit::feet;
    bool unit_is_known = true;           // false: bare lengths cannot be judged
    std::set<std::string> lost_sections; // that a misspelt header hides: names in them go unjudged
    std::vector<Reference> references;
    std::vector<DeclaredId> ids;    // in the order of sections, then of ids
    std::set<std::string> misspelt; // paths of keys left out that an unknown key looks like

    void add(Diagnostic diagnostic);
    /// Whether further diagnostics would only be counted, so that hostile files stay cheap.
    bool is_full() const { return diagnostics_.size() >= most_diagnostics; }
    /// All diagnostics in the order of the file; at most `most_diagnostics` and one that says so.
    std::vector<Diagnostic> take_diagnostics();
    /// Whether a fault was found in the element or key of that path or in a part of it.
    bool is_faulty(const std::string& path) const;

    /// The first element declared so far in one of the sections, for examples; else "north".
    std::string name_of_one(const std::vector<std::string>& sections) const;
    /// Two domes declared so far, as typed: ["north", "south"]; `first` leads if it is one.
    std::string names_of_two_domes(const std::string& first) const;

    void note_place(const std::string& path, SourcePlace place);
    bool has_place(const std::string& path) const { return places_.count(path) > 0; }
    /// Where the value of a path stands; for a value left out, the place of its table.
    faults::At at(const std::string& path) const;

private:
    std::vector<Diagnostic> diagnostics_;
    bool overflowed_ = false;
    std::set<std::string> faulty_;
    std::map<std::string, SourcePlace> places_;
};

} // namespace coilwright
