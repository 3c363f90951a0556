// A change of one value of the design that mends a check; what to look at where several would.
#pragma once

#include "geometry/base/finding.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// What a change does to another check: it fails, or is an advice, where it was none.
struct SideEffect {
    std::string code, subject;
    Verdict verdict = Verdict::fails;
};

/// The smallest change of one value, in steps that can be built, with which a check holds.
struct DesignChange {
    std::string table, key; // as in the design file: "dome.store", "profile.rise"
    std::string replaces;   // keys of that table, "a, b", that the value stands in place of
    double from = 0, to = 0;
    FindingUnit unit = FindingUnit::metre; // metre, degree or count
    double share = 0;                 // of the change in what is changed: which is the smallest
    Verdict verdict = Verdict::holds; // what the check says then
    std::optional<double> value;      // and its value then
    std::vector<SideEffect> worsens;
};

/// What was found for one finding.
struct SoughtChanges {
    std::string code, subject;         // the finding's
    std::vector<DesignChange> changes; // each does alone; none: no one value was found that does
};

/// What was found for a finding; nullptr where nothing was looked for.
inline const SoughtChanges* sought_for(const std::vector<SoughtChanges>& all,
                                       const Finding& finding) {
    for (const SoughtChanges& one : all)
        if (one.code == finding.code && one.subject == finding.subject)
            return &one;
    return nullptr;
}

} // namespace coilwright
