#include "geometry/report/report_pages.hpp"

#include <algorithm>

namespace coilwright {

namespace {

void add_stamp_room(Flow& flow) {
    flow.at_bottom(46, [&](Sheet& sheet, const PaperBox& box) {
        const double middle = box.left + box.width() * 0.58;
        add_box(sheet, {middle, box.bottom + 1, box.right, box.top}, pens::seen);
        add_text(sheet, {middle + 2, box.top - 5}, "Stamp", sizes::small);
        double y = box.top - 10;
        for (const char* line : {"Reviewed by", "Licence", "Date", "Signature"}) {
            add_text(sheet, {box.left, y}, line, sizes::body);
            add_line(sheet, {box.left + 26, y - 1}, {middle - 5, y - 1}, pens::seen);
            y -= 10;
        }
    });
}

std::string count_words(const std::vector<Finding>& findings, Verdict verdict) {
    return std::to_string(std::count_if(findings.begin(), findings.end(),
                                        [&](const Finding& f) { return f.verdict == verdict; }));
}

} // namespace

std::vector<Sheet> basis_pages(const Drafting& drafting, const std::vector<Finding>& findings) {
    bool first = true;
    Flow flow(drafting, [&] {
        const std::string title = first ? "Engineer's report" : "Engineer's report, continued";
        first = false;
        return titled_page(drafting, title, "");
    });
    flow.paragraph(drafting.schedule().name, sizes::heading, true);
    flow.paragraph(
        "Numbers for a licensed professional to start from. Nothing in these sheets says "
        "that the building is fit to stand or to be lived in.");
    flow.paragraph("Statics checks: " + count_words(findings, Verdict::fails) + " fail, " +
                       count_words(findings, Verdict::advice) + " call for advice, " +
                       count_words(findings, Verdict::holds) + " hold, " +
                       count_words(findings, Verdict::not_judged) + " are not judged.",
                   0, true);
    flow.heading("What is assumed");
    for (const char* text :
         {"Each check asks for its own line of thrust: the safety factor for the most centred, "
          "sliding for the one that needs least friction, crushing and the ground for the one that "
          "presses least, the stem and buttresses for the least thrust. No single line need do all "
          "of these at once.",
          "The cap is one body: joints between its discs are not checked. A ring may push at any "
          "height within its course. A tamped tube is a stadium, and plaster fills the hollows "
          "between tubes with its weight. The membrane's topmost ring takes no thrust from above.",
          "Courses are rigid and their joints carry compression and friction, no tension (Heyman, "
          "The Stone Skeleton, 1966). If one line of thrust keeps within the joints and balances "
          "the "
          "loads, the wall can stand.",
          "A joint carries where the flats of two tubes overlap: half a course height is left out "
          "at "
          "either end, because a tamped tube is round at its sides.",
          "A dome is a wedge of one radian, cut at its course joints. Each unbroken ring takes as "
          "much compression as it needs; tension only where the design counts its wire.",
          "An opening breaks the rings of the courses that it cuts. The strip beside it, as wide "
          "as "
          "the opening and half of that on either side, carries what stands above it.",
          "Weights: tubes, plaster on both faces, the loads stated. Forces of a dome are given on "
          "one "
          "radian of it, those of a tunnel on one metre."})
        flow.item(text, Flow::Mark::dot);
    flow.heading("What was not considered");
    for (const char* text :
         {"Cracks, creep, shrinkage, settlement, rain in the fill, fire, blasts and impact.",
          "The tension of the bags, wire as reinforcement (unless counted), cohesion, the soil's "
          "passive help.",
          "Uneven snow, suction of wind, torsion, and the ground's give under the wall.",
          "Rings that lean on each other where domes open into one another; loads that pass "
          "sideways over an opening; heads that are corbelled.",
          "Earthquakes beyond an even acceleration on a slice of parallel sides without rings."})
        flow.item(text, Flow::Mark::dot);
    add_stamp_room(flow);
    return flow.finish();
}

} // namespace coilwright
