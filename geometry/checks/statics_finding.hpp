// What all findings of the statics share: how a value is held against its limits, and numbers as
// text.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/design/design.hpp"

#include <string>

namespace coilwright {

/// Worse is more: fails 3, advice 2, not judged 1, holds 0.
int badness(Verdict verdict);

/// A finding of that code and subject, not judged yet.
Finding statics_finding(const std::string& code, const std::string& subject, SourcePlace place);

/// Judges a ratio of which more is better: fails under `least`, an advice under `good`, which the
/// finding keeps where it asks for more. An unlimited value holds and is left out. A value is at a
/// limit within 1e-6 of it.
void judge_ratio(Finding& finding, double value, double least, double good);

/// What rests on a default fails nothing: it becomes an advice, and says so at the end of its
/// message. `what`: "friction of the joints". Precondition: the message is written.
void soften_default(Finding& finding, bool stated, const std::string& what);
/// The same of the strength of the fill in a course, pressed with `pressure`, Pa: but what the best
/// published fill would not bear either fails, and says so, unless the pressure is `by_default`
/// too: that of a line which a friction that nobody measured keeps to.
void soften_unstated(Finding& finding, const Design& design, int course, double pressure,
                     bool by_default = false);
/// What a fill pressed so would have to bear: a remedy where a published one does.
std::string stronger_fill(const Design& design, double pressure);

/// The same of the friction on the ground.
void soften_ground_friction(Finding& finding, const Design& design);

/// Where the friction and the factor of a check of sliding come from: of the joints; on the ground.
std::string joint_sliding_source(const Design& design);
std::string ground_sliding_source(const Design& design);

/// A limit of the design. Precondition: the design was read (read_design sets all of them).
const Limit& limit_of(const Design& design, const std::string& name);

/// Three digits: "12.3 kPa" or "257 psf"; "4.21 kN" or "946 lbf"; "2.10 kN/m" or "144 plf".
std::string pressure_text(double pascals, DisplayUnit unit);
std::string stress_text(double pascals, DisplayUnit unit); // "1.23 MPa", "43.1 psi"
/// The same rounded up: what would do.
std::string least_stress_text(double pascals, DisplayUnit unit);
std::string force_text(double newtons, DisplayUnit unit);
std::string line_force_text(double newtons_per_metre, DisplayUnit unit);
std::string moment_text(double newton_metres, DisplayUnit unit); // "1.23 kN m", "907 lbf ft"
/// A value of a finding as its reader sees it, in the design's unit: a pressure of 6.89 MPa on the
/// ground is "144000 psf", of a lintel's bending "1000 psi".
std::string shown_value(const Finding& finding, double value, DisplayUnit unit);
/// What it is held against: "1.00, good from 2.00"; empty where there is no limit.
std::string shown_limit(const Finding& finding, DisplayUnit unit);
/// The next whole inch or centimetre, in metres: what a crew sets out. 0.301 -> 0.31.
double up_to_step(double metres, DisplayUnit unit);
/// Three digits without exponent: 0.0123, 1.23, 123, 12300.
std::string three_digits(double value);
/// The least value of three digits that is no less: 0.5731 -> 0.574. For what would do, shown in
/// the unit it is told in.
double up_to_three_digits(double value);

} // namespace coilwright
