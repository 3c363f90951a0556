#include "geometry/checks/statics_finding.hpp"

#include "geometry/base/length.hpp"
#include "geometry/base/quantity.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace coilwright {

namespace {

constexpr double psi = newtons_per_pound_force / (metres_per_inch * metres_per_inch);

} // namespace

int badness(Verdict verdict) {
    switch (verdict) {
    case Verdict::fails:
        return 3;
    case Verdict::advice:
        return 2;
    case Verdict::not_judged:
        return 1;
    case Verdict::holds:
        break;
    }
    return 0;
}

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
    if (good > least)
        finding.good = good;
    if (std::isfinite(value))
        finding.value = value;
    finding.verdict = !(value >= least - tie)  ? Verdict::fails
                      : !(value >= good - tie) ? Verdict::advice
                                               : Verdict::holds;
}

void soften_default(Finding& finding, bool stated, const std::string& what) {
    if (finding.verdict != Verdict::fails || stated)
        return;
    finding.verdict = Verdict::advice;
    finding.message += " The " + what + " is a default, not measured: a default fails nothing.";
}

void soften_unstated(Finding& finding, const Design& design, int course, double pressure,
                     bool by_default) {
    if (finding.verdict != Verdict::fails || fill_strength(design, course).stated)
        return;
    const Limit& best = limit_of(design, "fill-strength.best");
    const bool beyond = pressure * limit_of(design, "crushing.least").value > best.value;
    if (beyond)
        finding.message += " No more would the best published fill, " +
                           stress_text(best.value, design.unit) + " (" + source_text(best) + ").";
    soften_default(finding, beyond && !by_default,
                   beyond ? "friction of the joints, which keeps the line so near an edge,"
                          : "strength of the fill");
}

std::string stronger_fill(const Design& design, double pressure) {
    const double wanted = pressure * limit_of(design, "crushing.good").value;
    const Limit& best = limit_of(design, "fill-strength.best");
    if (wanted > best.value)
        return "Take a wider tube: no published fill bears the " +
               least_stress_text(wanted, design.unit) + " that would hold (the best " +
               stress_text(best.value, design.unit) + ": " + source_text(best) + ").";
    return "Test cylinders of the fill: " + least_stress_text(wanted, design.unit) +
           " would hold; or take a wider tube.";
}

namespace {

std::string value_source(const std::string& what, double value, bool stated, const char* table) {
    return what + " " + three_digits(value) +
           (stated ? ", stated in the design, [" + std::string(table) + "]"
                   : ", a default: a judgement without source");
}

std::string factor_source(const Design& design) {
    return value_source("factor", design.joint.factor, design.joint.factor_stated, "joint");
}

} // namespace

std::string joint_sliding_source(const Design& design) {
    return value_source("friction", design.joint.friction, design.joint.friction_stated, "joint") +
           "; " + factor_source(design);
}

std::string ground_sliding_source(const Design& design) {
    return "balance; " +
           value_source("friction", design.ground.friction, design.ground.friction_stated,
                        "ground") +
           "; " + factor_source(design);
}

void soften_ground_friction(Finding& finding, const Design& design) {
    soften_default(finding, design.ground.friction_stated, "friction on the ground");
}

std::string shown_value(const Finding& finding, double value, DisplayUnit unit) {
    switch (finding.unit) {
    case FindingUnit::metre:
        return length_text(value, unit);
    case FindingUnit::square_metre:
        return area_text(value, unit);
    case FindingUnit::pascal:
        return finding.code == "lintel-bending" ? stress_text(value, unit)
                                                : pressure_text(value, unit);
    case FindingUnit::newton:
        return force_text(value, unit);
    case FindingUnit::newton_per_metre:
        return line_force_text(value, unit);
    case FindingUnit::newton_metre:
        return moment_text(value, unit);
    case FindingUnit::none:
    case FindingUnit::ratio:
        return three_digits(value);
    case FindingUnit::count:
        return fixed_text(value, 0);
    default:
        return fixed_text(value, 2) + " " + unit_word(finding.unit);
    }
}

std::string shown_limit(const Finding& finding, DisplayUnit unit) {
    if (!finding.limit)
        return finding.good ? shown_value(finding, *finding.good, unit) : std::string();
    const std::string limit = shown_value(finding, *finding.limit, unit);
    return finding.good && *finding.good > *finding.limit + 1e-9
               ? limit + ", good from " + shown_value(finding, *finding.good, unit)
               : limit;
}

const Limit& limit_of(const Design& design, const std::string& name) {
    const Limit* limit = find_limit(design.limits, name);
    assert(limit);
    return *limit;
}

double up_to_step(double metres, DisplayUnit unit) {
    const double step = unit == DisplayUnit::feet ? metres_per_inch : 0.01;
    return std::ceil(metres / step - 1e-6) * step;
}

double up_to_three_digits(double value) {
    if (!(value > 0) || !std::isfinite(value))
        return value;
    const double step = std::pow(10, std::floor(std::log10(value)) - 2);
    return std::ceil(value / step - 1e-9) * step;
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
    return unit == DisplayUnit::feet ? three_digits(pascals / psi) + " psi"
                                     : three_digits(pascals / 1e6) + " MPa";
}

std::string least_stress_text(double pascals, DisplayUnit unit) {
    const double shown = unit == DisplayUnit::feet ? psi : 1e6;
    return stress_text(up_to_three_digits(pascals / shown) * shown, unit);
}

std::string force_text(double newtons, DisplayUnit unit) {
    return unit == DisplayUnit::feet ? three_digits(newtons / newtons_per_pound_force) + " lbf"
                                     : three_digits(newtons / 1000) + " kN";
}

std::string moment_text(double newton_metres, DisplayUnit unit) {
    constexpr double foot_pound = newtons_per_pound_force * metres_per_foot;
    return unit == DisplayUnit::feet ? three_digits(newton_metres / foot_pound) + " lbf ft"
                                     : three_digits(newton_metres / 1000) + " kN m";
}

std::string line_force_text(double newtons_per_metre, DisplayUnit unit) {
    constexpr double plf = newtons_per_pound_force / metres_per_foot;
    return unit == DisplayUnit::feet ? three_digits(newtons_per_metre / plf) + " plf"
                                     : three_digits(newtons_per_metre / 1000) + " kN/m";
}

} // namespace coilwright
