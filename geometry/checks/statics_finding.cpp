#include "geometry/checks/statics_finding.hpp"

#include "geometry/base/length.hpp"
#include "geometry/base/quantity.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace coilwright {

Finding statics_finding(const std::string& code, const std::string& subject, SourcePlace place) {
    Finding found;
    found.code = code;
    found.subject = subject;
    found.place = place;
    return found;
}

void judge_ratio(Finding& finding, double value, double least, double good) {
    constexpr double tie = 1e-6;
    finding.unit = FindingUnit::ratio;
    finding.limit = least;
    if (std::isfinite(value))
        finding.value = value;
    finding.verdict = !(value >= least - tie)  ? Verdict::fails
                      : !(value >= good - tie) ? Verdict::advice
                                               : Verdict::holds;
}

void soften_unstated(Finding& finding, const Design& design, int course) {
    if (finding.verdict == Verdict::fails && !fill_strength(design, course).stated)
        finding.verdict = Verdict::advice;
}

const Limit& limit_of(const Design& design, const std::string& name) {
    const Limit* limit = find_limit(design.limits, name);
    assert(limit);
    return *limit;
}

std::string three_digits(double value) {
    const double size = std::abs(value);
    if (size == 0 || !std::isfinite(value))
        return size == 0 ? "0" : "without limit";
    const int before = static_cast<int>(std::floor(std::log10(size))) + 1;
    if (before > 3) {
        const double step = std::pow(10, before - 3);
        return fixed_text(std::round(value / step) * step, 0);
    }
    return fixed_text(value, std::min(6, 3 - before));
}

std::string pressure_text(double pascals, DisplayUnit unit) {
    constexpr double psf = newtons_per_pound_force / square_metres_per_square_foot;
    return unit == DisplayUnit::feet ? three_digits(pascals / psf) + " psf"
                                     : three_digits(pascals / 1000) + " kPa";
}

std::string stress_text(double pascals, DisplayUnit unit) {
    constexpr double psi = newtons_per_pound_force / (metres_per_inch * metres_per_inch);
    return unit == DisplayUnit::feet ? three_digits(pascals / psi) + " psi"
                                     : three_digits(pascals / 1e6) + " MPa";
}

std::string force_text(double newtons, DisplayUnit unit) {
    return unit == DisplayUnit::feet ? three_digits(newtons / newtons_per_pound_force) + " lbf"
                                     : three_digits(newtons / 1000) + " kN";
}

std::string line_force_text(double newtons_per_metre, DisplayUnit unit) {
    constexpr double plf = newtons_per_pound_force / metres_per_foot;
    return unit == DisplayUnit::feet ? three_digits(newtons_per_metre / plf) + " plf"
                                     : three_digits(newtons_per_metre / 1000) + " kN/m";
}

} // namespace coilwright
