// Which findings the crew is told.
#include "geometry/drawing/crew_pages.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace coilwright {

namespace {

// What is mended on site: by what is dug, laid, tied, propped or waited for. Rooms, light and
// shapes are the designer's. Beside a code: what to do in plain words, where the check's own remedy
// speaks of the design's keys; else that remedy.
struct CrewCheck {
    std::string_view code, plain = {};
};

constexpr CrewCheck of_the_crew[] = {
    {"base-courses", "Fill these courses with gravel in double tubes, or with stabilised fill: ask "
                     "whoever drew the design which."},
    {"buttress-at-opening", "Ask whoever drew the design for a buttress on each side of it."},
    {"cap-hole",
     "Do not lay the cap. Ask whoever drew the design for a skylight or a steeper crown."},
    {"daily-height"},
    {"footing-depth"},
    {"frame-deeper-than-band",
     "Ask whoever drew the design to have the jambs built out plumb, or set "
     "a shallower frame."},
    {"free-corbel"},
    {"frost-depth", "Ask whoever drew the design how deep the trench and its gravel go."},
    {"head-cover"},
    {"head-misses-joint"},
    {"joint-lap-short"},
    {"lintel-rest", "Ask whoever drew the design for a lintel that reaches farther over the wall."},
    {"lintel-width", "Ask whoever drew the design for a wider lintel, or a second one beside it."},
    {"open-stages"},
    {"short-pieces",
     "Fold each into one bag. Lay it after what stops it and before the ring, and tamp it tight."},
    {"sill-misses-joint"},
    {"step-in-over-half", "Ask whoever drew the design for a steeper profile."},
    {"step-in-over-quarter", "Lay these courses slowly, each ring closed before the next."},
    {"tunnel-corbel"},
    {"wire-strands", "Ask whoever drew the design how many strands to lay."}};

const CrewCheck* find_check(const Finding& finding) {
    const auto found =
        std::find_if(std::begin(of_the_crew), std::end(of_the_crew),
                     [&](const CrewCheck& check) { return check.code == finding.code; });
    return found == std::end(of_the_crew) ? nullptr : found;
}

std::string with_remedy(const Finding& finding, const CrewCheck& check) {
    const std::string remedy =
        check.plain.empty() || finding.remedy.empty() ? finding.remedy : std::string(check.plain);
    return finding.message + (remedy.empty() ? "" : " " + remedy);
}

} // namespace

std::vector<std::string> failing_checks(const std::vector<Finding>& findings) {
    std::vector<std::string> failing;
    for (const Finding& finding : findings)
        if (finding.verdict == Verdict::fails) {
            const CrewCheck* check = find_check(finding);
            failing.push_back(check ? with_remedy(finding, *check) : finding.message);
        }
    return failing;
}

std::vector<std::string> asked_of_crew(const std::vector<Finding>& findings) {
    std::vector<std::string> asked;
    for (const Finding& finding : findings)
        if (const CrewCheck* check = find_check(finding);
            check && finding.verdict == Verdict::advice)
            asked.push_back(with_remedy(finding, *check));
    return asked;
}

} // namespace coilwright
