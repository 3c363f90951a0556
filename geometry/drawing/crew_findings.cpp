// Which findings the crew is told.
#include "geometry/drawing/crew_pages.hpp"

#include <algorithm>
#include <iterator>
#include <string_view>

namespace coilwright {

namespace {

// What is mended on site: by what is dug, laid, tied, propped or waited for. Rooms, light and
// shapes are the designer's.
constexpr std::string_view of_the_crew[] = {"base-courses",
                                            "buttress-at-opening",
                                            "daily-height",
                                            "footing-depth",
                                            "frame-deeper-than-band",
                                            "free-corbel",
                                            "frost-depth",
                                            "head-cover",
                                            "head-misses-joint",
                                            "joint-lap-short",
                                            "lintel-rest",
                                            "short-pieces",
                                            "sill-misses-joint",
                                            "step-in-over-half",
                                            "step-in-over-quarter",
                                            "tunnel-corbel",
                                            "wire-strands"};

bool is_of_the_crew(const Finding& finding) {
    return std::find(std::begin(of_the_crew), std::end(of_the_crew), finding.code) !=
           std::end(of_the_crew);
}

std::string with_remedy(const Finding& finding) {
    return finding.message + (finding.remedy.empty() ? "" : " " + finding.remedy);
}

} // namespace

std::vector<std::string> failing_checks(const std::vector<Finding>& findings) {
    std::vector<std::string> failing;
    for (const Finding& finding : findings)
        if (finding.verdict == Verdict::fails)
            failing.push_back(is_of_the_crew(finding) ? with_remedy(finding) : finding.message);
    return failing;
}

std::vector<std::string> asked_of_crew(const std::vector<Finding>& findings) {
    std::vector<std::string> asked;
    for (const Finding& finding : findings)
        if (finding.verdict == Verdict::advice && is_of_the_crew(finding))
            asked.push_back(with_remedy(finding));
    return asked;
}

} // namespace coilwright
