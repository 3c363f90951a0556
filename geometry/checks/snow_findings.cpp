#include "geometry/checks/snow_findings.hpp"

#include "geometry/checks/statics_finding.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// Of pressures on the ground more is worse; of all else that statics finds, less.
bool is_worse(const Finding& a, const Finding& b) {
    if (badness(a.verdict) != badness(b.verdict))
        return badness(a.verdict) > badness(b.verdict);
    if (!a.value || !b.value)
        return b.value.has_value(); // what has none could not be reckoned
    const bool more = a.code == "ground-pressure" || a.code == "tunnel-ground";
    return more ? *a.value > *b.value : *a.value < *b.value;
}

std::string told(const Finding& finding, DisplayUnit unit) {
    return finding.value ? shown_value(finding, *finding.value, unit)
                         : std::string("no value, ") + verdict_text(finding.verdict);
}

} // namespace

bool has_snow(const Design& design) {
    return design.site.snow.value_or(0.0) > 0;
}

std::vector<Finding> worse_of_snow(const Design& design, const FindingsUnder& findings_under) {
    std::vector<Finding> findings = findings_under({});
    if (!has_snow(design))
        return findings;
    DomeLoads loads;
    loads.snow = true;
    const std::string snow = pressure_text(*design.site.snow, design.unit);
    std::vector<Finding> all_with = findings_under(loads);
    for (Finding& finding : findings)
        if (std::none_of(all_with.begin(), all_with.end(), [&](const Finding& with) {
                return with.code == finding.code && with.subject == finding.subject;
            })) {
            finding.message += " Under snow of " + snow + " it is not known.";
            if (finding.verdict == Verdict::holds)
                finding.verdict = Verdict::not_judged;
        }
    for (Finding& with : all_with) {
        const auto without =
            std::find_if(findings.begin(), findings.end(), [&](const Finding& other) {
                return other.code == with.code && other.subject == with.subject;
            });
        if (without == findings.end()) {
            with.message += " So under snow of " + snow + ".";
            findings.push_back(std::move(with));
        } else if (is_worse(with, *without)) {
            with.message +=
                " So under snow of " + snow + "; without it: " + told(*without, design.unit) + ".";
            *without = std::move(with);
        } else
            without->message +=
                " So without snow; under snow of " + snow + ": " + told(with, design.unit) + ".";
    }
    return findings;
}

} // namespace coilwright
