#include "geometry/design/read_tables.hpp"

#include <algorithm>
#include <tuple>

namespace coilwright {

namespace {

// Fills and joins are named apart: they describe what stands under another name.
bool shares_names(const std::string& section) {
    return section != "fill" && section != "join";
}

void check_repeats(const ReadContext& context, std::vector<Diagnostic>& found) {
    std::vector<DeclaredId> ids;
    for (const DeclaredId& declared : context.ids)
        if (shares_names(declared.section))
            ids.push_back(declared);
    // The one that stands first in the file has the name.
    const auto order = [](const DeclaredId& d) {
        return std::tie(d.id, d.at.place.line, d.at.place.column, d.section);
    };
    std::sort(ids.begin(), ids.end(),
              [&](const DeclaredId& a, const DeclaredId& b) { return order(a) < order(b); });
    std::size_t first = 0;
    for (std::size_t i = 1; i < ids.size(); ++i) {
        if (ids[i].id != ids[first].id)
            first = i;
        else
            found.push_back(
                faults::repeated_id(ids[i].at, ids[i].id, ids[first].at.path, ids[first].at.place));
    }
}

bool contains(const std::vector<std::string>& list, const std::string& word) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

void check_reference(const Reference& reference, const ReadContext& context,
                     std::vector<Diagnostic>& found) {
    for (const std::string& section : reference.sections)
        if (context.lost_sections.count(section) > 0)
            return;
    std::vector<std::string> known;
    const DeclaredId* of_other_kind = nullptr;
    for (const DeclaredId& declared : context.ids) {
        if (contains(reference.sections, declared.section)) {
            if (declared.id == reference.id)
                return;
            known.push_back(declared.id);
        } else if (declared.id == reference.id && shares_names(declared.section)) {
            of_other_kind = &declared;
        }
    }
    if (!of_other_kind) {
        found.push_back(
            faults::unknown_reference(reference.at, reference.id, known, reference.sections));
        return;
    }
    found.push_back(faults::wrong_reference(
        reference.at,
        "`" + reference.at.key() + "` names [" + of_other_kind->at.path +
            "], which cannot stand here",
        known.empty() ? "the name of a [" + reference.sections.front() + ".NAME]"
                      : faults::listed(known),
        '"' + (known.empty() ? std::string("north") : known.front()) + '"'));
}

} // namespace

void check_names(ReadContext& context) {
    std::vector<Diagnostic> found;
    check_repeats(context, found);
    for (const Reference& reference : context.references)
        check_reference(reference, context, found);
    for (Diagnostic& diagnostic : found)
        context.add(std::move(diagnostic));
}

} // namespace coilwright
