// Earthquake and wind on a slice without rings.
#include "geometry/base/quantity.hpp"
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/statics_finding.hpp"

namespace coilwright {

namespace {

constexpr const char* slice_words = "a slice of parallel sides and unit width clear of openings, "
                                    "without rings and without sliding";

Finding of_dome(const Design& design, const DomeForm& dome, const std::string& code) {
    return statics_finding(code, "dome." + dome.id, find_dome(design, dome.id)->place);
}

void judge_site(Finding& found, double capacity, const std::optional<double>& asked,
                const std::string& key) {
    if (capacity <= 0) {
        found.message += " does not stand without its rings, so it tells nothing of the dome.";
        found.value.reset();
        found.remedy = "Ask an engineer for a reckoning with rings.";
        return;
    }
    if (!asked) {
        found.message += "; what the site asks is not stated.";
        found.remedy = "State [site] " + key + ".";
        return;
    }
    found.limit = *asked;
    found.verdict = capacity >= *asked ? Verdict::holds : Verdict::advice;
    if (found.verdict == Verdict::advice) {
        found.message +=
            ", less than the site asks. Whole rings would bear more, openings make it less; how "
            "much is not reckoned here.";
        found.remedy = "Ask an engineer for a reckoning with rings; a wider tube or a lower dome "
                       "bears more.";
    } else
        found.message += ", and the site asks no more.";
}

} // namespace

std::vector<Finding> sideways_findings(const Design& design, const DomeForm& dome,
                                       const DomeAnalysis& analysis) {
    if (analysis.statics.strips.empty())
        return {};
    Finding quake = of_dome(design, dome, "earthquake-slice");
    quake.formula = "greatest even sideways acceleration, as a share of gravity, of " +
                    std::string(slice_words);
    quake.source = "limit analysis, tested against Oppenheim 1992; lower than an unbroken dome "
                   "bears; openings are not considered";
    quake.unit = FindingUnit::ratio;
    quake.value = analysis.sway;
    quake.message = "A slice of '" + dome.id + "'" +
                    (analysis.sway > 0 ? " bears " + three_digits(analysis.sway) +
                                             " g sideways, its rings left out"
                                       : "");
    const std::optional<double>& acceleration = design.site.seismic_acceleration;
    judge_site(quake, analysis.sway,
               acceleration ? std::optional(*acceleration / standard_gravity) : std::nullopt,
               "seismic_acceleration");
    Finding wind = of_dome(design, dome, "wind-slice");
    wind.formula = "greatest even pressure on one side of " + std::string(slice_words) +
                   "; no suction on the other";
    wind.source = quake.source;
    wind.unit = FindingUnit::pascal;
    wind.value = analysis.wind;
    wind.message =
        "A slice of '" + dome.id + "'" +
        (analysis.wind > 0 ? " bears a wind of " + pressure_text(analysis.wind, design.unit) +
                                 ", its rings left out"
                           : "");
    judge_site(wind, analysis.wind, design.site.wind_pressure, "wind_pressure");
    return {quake, wind};
}

} // namespace coilwright
