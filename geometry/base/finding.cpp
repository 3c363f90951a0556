#include "geometry/base/finding.hpp"

namespace coilwright {

std::string verdict_text(Verdict verdict) {
    switch (verdict) {
    case Verdict::holds:
        return "holds";
    case Verdict::advice:
        return "advice";
    case Verdict::fails:
        return "fails";
    case Verdict::not_judged:
        return "not judged";
    }
    return {};
}

std::string unit_word(FindingUnit unit) {
    switch (unit) {
    case FindingUnit::none:
        return "none";
    case FindingUnit::metre:
        return "m";
    case FindingUnit::square_metre:
        return "m2";
    case FindingUnit::cubic_metre:
        return "m3";
    case FindingUnit::litre:
        return "l";
    case FindingUnit::degree:
        return "deg";
    case FindingUnit::count:
        return "count";
    case FindingUnit::ratio:
        return "ratio";
    case FindingUnit::per_cent:
        return "%";
    case FindingUnit::day:
        return "day";
    case FindingUnit::newton:
        return "N";
    case FindingUnit::newton_metre:
        return "N m";
    case FindingUnit::newton_per_metre:
        return "N/m";
    case FindingUnit::pascal:
        return "Pa";
    }
    return {};
}

} // namespace coilwright
