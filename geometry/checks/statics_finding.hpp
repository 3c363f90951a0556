// What all findings of the statics share: how a value is held against its limits, and numbers as
// text.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/design/design.hpp"

#include <string>

namespace coilwright {

/// A finding of that code and subject, not judged yet.
Finding statics_finding(const std::string& code, const std::string& subject, SourcePlace place);

/// Judges a ratio of which more is better: fails under `least`, an advice under `good`. An
/// unlimited value holds and is left out. A value is at a limit within 1e-6 of it.
void judge_ratio(Finding& finding, double value, double least, double good);

/// A default of the strength of the fill fails nothing: an advice where the design states none for
/// that course.
void soften_unstated(Finding& finding, const Design& design, int course);

/// A limit of the design. Precondition: the design was read (read_design sets all of them).
const Limit& limit_of(const Design& design, const std::string& name);

/// Three digits: "12.3 kPa" or "257 psf"; "4.21 kN" or "946 lbf"; "2.10 kN/m" or "144 plf".
std::string pressure_text(double pascals, DisplayUnit unit);
std::string stress_text(double pascals, DisplayUnit unit); // "1.23 MPa", "43.1 psi"
std::string force_text(double newtons, DisplayUnit unit);
std::string line_force_text(double newtons_per_metre, DisplayUnit unit);
/// Three digits without exponent: 0.0123, 1.23, 123, 12300.
std::string three_digits(double value);

} // namespace coilwright
