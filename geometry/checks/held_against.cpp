#include "geometry/checks/held_against.hpp"

#include "geometry/base/shown_step.hpp"

#include <cmath>

namespace coilwright {

namespace {

constexpr double tie = 1e-6; // metres; far below what anyone can build

} // namespace

Finding held_against(const std::string& code, const Subject& subject, double value,
                     FindingUnit unit, Bound side, const Limit& limit, Verdict beyond) {
    Finding found;
    found.code = code;
    found.subject = subject.name;
    found.place = subject.place;
    found.value = value;
    found.limit = limit.value;
    found.unit = unit;
    found.source = source_text(limit);
    const bool holds =
        side == Bound::at_least ? value >= limit.value - tie : value <= limit.value + tie;
    found.verdict = holds ? Verdict::holds : beyond;
    return found;
}

Finding not_judged(const std::string& code, const Subject& subject, const Limit& limit,
                   const std::string& message) {
    Finding found;
    found.code = code;
    found.subject = subject.name;
    found.place = subject.place;
    found.source = source_text(limit);
    found.message = message;
    return found;
}

std::string Wording::length_up(double metres) const {
    const double step = shown_step(unit);
    return length_text(std::ceil(metres / step - 1e-6) * step, unit);
}

std::string Wording::length_down(double metres) const {
    const double step = shown_step(unit);
    return length_text(std::floor(metres / step + 1e-6) * step, unit);
}

} // namespace coilwright
