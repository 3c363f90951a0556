#include "geometry/checks/dome_findings.hpp"

#include "geometry/base/length.hpp"

namespace coilwright {

namespace {

std::string strip_words(const StripStatics& strip) {
    return strip.beside.empty() ? "clear of all openings" : "beside '" + strip.beside + "'";
}

Finding geometric_safety(const Design& design, const DomeForm& dome, const DomeStatics& statics) {
    const Limit& least = design.limits.at("geometric-safety.least");
    const Limit& good = design.limits.at("geometric-safety.good");
    Finding found;
    found.code = "geometric-safety";
    found.subject = "dome." + dome.id;
    found.place = find_dome(design, dome.id)->profile.place;
    found.unit = FindingUnit::ratio;
    found.limit = least.value;
    found.source = source_text(least);
    found.formula = "half contact / greatest distance of the most centred line of thrust from the "
                    "middle of a joint";
    if (statics.strips.empty()) {
        found.message = "A course of '" + dome.id +
                        "' finds nothing to lie on, so there is no line of thrust to look for.";
        found.remedy = "First mend the course without bearing.";
        return found;
    }
    const StripStatics& worst = statics.strips[statics.worst];
    const double safety = worst.centred.safety();
    found.value = safety;
    found.verdict = safety < least.value  ? Verdict::fails
                    : safety < good.value ? Verdict::advice
                                          : Verdict::holds;
    found.message =
        safety < least.value
            ? "No line of thrust keeps within the wall of '" + dome.id + "' " + strip_words(worst) +
                  "; the best one leaves it by a factor of " + fixed_text(safety, 2) + "."
            : "The most centred line of thrust of '" + dome.id + "' " + strip_words(worst) +
                  " would keep within joints " + fixed_text(safety, 2) +
                  " times narrower, with every ring closed and pressed.";
    if (safety < good.value)
        found.remedy =
            "A higher rise, a wider tube or a narrower opening brings the line nearer to "
            "the middle of the wall.";
    return found;
}

} // namespace

std::vector<Finding> dome_findings(const Design& design, const DomeForm& dome,
                                   const DomeStatics& statics) {
    return {geometric_safety(design, dome, statics)};
}

} // namespace coilwright
