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

} // namespace coilwright
