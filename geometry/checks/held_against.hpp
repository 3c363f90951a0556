// How a measured value becomes a finding: held against a limit that names its source.
#pragma once

#include "geometry/base/finding.hpp"
#include "geometry/base/length.hpp"
#include "geometry/design/design.hpp"

#include <string>

namespace coilwright {

/// On which side of its limit a value holds; heights within 1 um of it hold.
enum class Bound { at_least, at_most };

/// What a finding is about.
struct Subject {
    std::string name; // "dome.store"
    SourcePlace place;
};

/// A finding with value, limit, unit and source; its verdict is `beyond` where the value is on the
/// wrong side of the limit, else holds. Message and remedy are the caller's.
Finding held_against(const std::string& code, const Subject& subject, double value,
                     FindingUnit unit, Bound side, const Limit& limit, Verdict beyond);

/// A finding of something that could not be judged, with the source of the rule.
Finding not_judged(const std::string& code, const Subject& subject, const Limit& limit,
                   const std::string& message);

/// Lengths and areas as a design's reader sees them. Not shown less (up) or more (down) than they
/// are.
struct Wording {
    DisplayUnit unit = DisplayUnit::feet;
    std::string length(double metres) const { return length_text(metres, unit); }
    std::string length_up(double metres) const;
    std::string length_down(double metres) const;
    std::string area(double square_metres) const { return area_text(square_metres, unit); }
};

} // namespace coilwright
