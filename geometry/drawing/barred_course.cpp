#include "geometry/drawing/barred_course.hpp"

#include "geometry/base/shown_step.hpp"
#include "geometry/drawing/course_head.hpp"
#include "geometry/plan/contact.hpp"

#include <algorithm>
#include <utility>

namespace coilwright {

namespace {

/// How course n misses the one below; nothing where it rests.
std::string misses_text(const Drafting& drafting, const DomeForm& dome, int n) {
    const double overlap = contact_overlap(dome, n, drafting.plan.design.course.edge);
    if (overlap > 0)
        return {};
    const std::string course = "Course " + std::to_string(n), below = std::to_string(n - 1);
    const double hole = 2 * inside_radius(dome, dome.course_middle(n - 1));
    const double across = 2 * outside_radius(dome, dome.course_middle(n));
    if (n > dome.last_ring + dome.curb_courses && across <= hole)
        return course + " is a disc " + drafting.length(across) +
               " across over the hole of course " + below + ", which is " + drafting.length(hole) +
               " across: it would fall through.";
    return course + " does not rest on course " + below +
           (overlap > -shown_step(drafting.unit()) / 2
                ? ": the flats of their tubes only touch."
                : ": the flats of their tubes miss each other by " + drafting.length(-overlap) +
                      ".");
}

/// What the check proposes; nothing where it was not made.
std::string remedy_for(const BuildingPlan& plan, const std::string& dome) {
    for (const Finding& finding : plan.findings)
        if (finding.code == "course-without-bearing" &&
            finding.subject.rfind("dome." + dome + " ", 0) == 0)
            return finding.remedy;
    return {};
}

} // namespace

int barred_from(const BuildingPlan& plan, const CoursePart& part) {
    if (!part.dome)
        return 0;
    const int first = first_without_contact(*part.dome, plan.design.course.edge);
    return first > 0 && part.course->number >= first ? first : 0;
}

std::vector<Sheet> barred_course_pages(const Drafting& drafting, const CoursePart& part) {
    const int first = barred_from(drafting.plan, part), own = part.course->number;
    int page = 0;
    Flow flow(drafting, [&] { return course_page(drafting, part, ++page, 1); });
    flow.space(4);
    const double size = 6;
    if (own > first)
        flow.paragraph("Course " + std::to_string(first) +
                           " below does not carry, and nothing can lie on it.",
                       size, true);
    if (const std::string text = misses_text(drafting, *part.dome, own); !text.empty())
        flow.paragraph(text, size, true);
    flow.space(2);
    flow.item(
        "Do not go above course " + std::to_string(first - 1) +
            ". What is laid beyond it hangs on nothing and comes down on whoever stands below.",
        Flow::Mark::dot);
    flow.item("Keep everyone out from under the open rings, and keep rain off them.",
              Flow::Mark::dot);
    flow.item("Take this sheet to whoever drew the design. Lay on only from a book made anew, with "
              "sheets for these courses that do not say this.",
              Flow::Mark::dot);
    if (const std::string remedy = remedy_for(drafting.plan, part.dome->id); !remedy.empty())
        flow.item("For the designer: " + remedy, Flow::Mark::dot);
    return flow.finish();
}

} // namespace coilwright
