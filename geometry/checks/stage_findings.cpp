// The stages of building: whether what is laid so far keeps a line of thrust.
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/statics_finding.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// The stage of building in which a strip keeps its line of thrust least well.
struct Weakest {
    double safety = unlimited;
    int last = 0;
    std::string beside; // what weakens the strip; empty: clear of all openings
};

double safety_of(const BuildingStage& stage) {
    return stage.share > 0 ? 1 / stage.share : unlimited;
}

/// Among the stages from one course to another: every third, then those about the worst of them.
void seek_weakest(const std::vector<WallCourse>& courses, const DomeSlice& what, int from, int to,
                  Weakest& weakest) {
    constexpr int step = 3;
    int worst = 0;
    double least = unlimited;
    const auto look_at = [&](int last) {
        const double safety = safety_of(building_stage(courses, what, last));
        if (worst == 0 || safety < least) {
            worst = last;
            least = safety;
        }
    };
    for (int last = to; last >= from; last -= step)
        look_at(last);
    if (worst == 0)
        return;
    const int coarse = worst;
    for (int last = std::max(from, coarse - step + 1); last < std::min(to + 1, coarse + step);
         ++last)
        if (last != coarse)
            look_at(last);
    if (least < weakest.safety)
        weakest = {least, worst, what.beside.value_or("")};
}

} // namespace

std::vector<Finding> stage_findings(const Design& design, const DomeForm& dome,
                                    const DomeAnalysis& analysis) {
    if (analysis.statics.strips.empty())
        return {};
    Finding found =
        statics_finding("open-stages", "dome." + dome.id, find_dome(design, dome.id)->place);
    const Limit& least = limit_of(design, "geometric-safety.least");
    const std::vector<WallCourse>& courses = analysis.statics.courses;
    Weakest free, on_form;
    DomeSlice above;
    above.first = analysis.springline_course; // below it each stage is a plumb wall
    for (const BuildingStage& stage : building_stages(courses, above)) {
        if (safety_of(stage) < free.safety)
            free = {safety_of(stage), stage.last, ""};
    }
    // Broken rings lean on the forms in them, those of other openings too.
    const int top = courses.back().number;
    int until = 0;
    for (const auto& [id, course] : analysis.forms_until)
        until = std::min(std::max(until, course), top);
    for (const StripStatics& strip : analysis.statics.strips) {
        if (strip.beside.empty())
            continue;
        DomeSlice beside = above;
        beside.beside = strip.beside;
        seek_weakest(courses, beside, std::max(above.first, until + 1), top, free);
        seek_weakest(courses, beside, above.first, until, on_form);
    }
    const double worst = free.safety;
    const int at = free.last;
    const std::string where = free.beside.empty() ? "" : " beside '" + free.beside + "'";
    found.formula = "geometric factor of safety of the courses from the springline to each course, "
                    "its ring closed";
    found.source = source_text(least);
    judge_ratio(found, worst, least.value, least.value);
    found.message = "While it is built '" + dome.id + "' is weakest" + where + " with course " +
                    std::to_string(at) + " laid: the line of thrust would keep within joints " +
                    three_digits(worst) + " times narrower, that ring closed.";
    if (worst < 1) {
        std::string broken; // by what; such a ring cannot be closed
        for (const RingGap& gap : courses[static_cast<std::size_t>(at - 1)].gaps)
            broken += (broken.empty() ? " '" : ", '") + gap.by + "'";
        found.message =
            "With course " + std::to_string(at) + " laid" +
            (broken.empty()
                 ? " and its ring closed"
                 : ", its ring open at" + broken + " and whatever a form there carries left out") +
            ", no line of thrust keeps within the wall of '" + dome.id + "'" + where + ".";
        found.remedy = "Prop it from inside from there on until the next rings are closed.";
    }
    if (on_form.safety < 1) { // the form holds the jambs apart until it is struck
        found.message += " Until the forms are struck the wall beside '" + on_form.beside +
                         "' leans on them: with course " + std::to_string(on_form.last) +
                         " laid no line of thrust keeps within the wall without them.";
        if (found.verdict == Verdict::holds)
            found.verdict = Verdict::advice;
        found.remedy += std::string(found.remedy.empty() ? "" : " ") + "Brace the form of '" +
                        on_form.beside +
                        "' against being pressed together and into the room, and strike it no "
                        "sooner than its sheet says.";
    }
    leave_joined(found, joined_domes(courses));
    return {found};
}

} // namespace coilwright
