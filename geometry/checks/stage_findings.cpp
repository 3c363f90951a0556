// The stages of building: whether what is laid so far keeps a line of thrust.
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/statics_finding.hpp"

#include <algorithm>
#include <functional>
#include <map>
#include <set>

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

using StageOf = std::function<BuildingStage(int last)>;

/// Among the stages from one course to another: every third, then those about the worst of them.
void seek_weakest(const StageOf& stage_of, const std::string& beside, int from, int to,
                  Weakest& weakest) {
    constexpr int step = 3;
    int worst = 0;
    double least = unlimited;
    const auto look_at = [&](int last) {
        const double safety = safety_of(stage_of(last));
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
        weakest = {least, worst, beside};
}

/// The gaps whose forms stand when a course is laid and the forms that go with it are out.
std::set<std::string> forms_in(const std::map<std::string, int>& forms_until, int last) {
    std::set<std::string> in;
    for (const auto& [id, until] : forms_until)
        if (until > last)
            in.insert(id);
    return in;
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
    const int top = courses.back().number;
    Weakest free, on_form;
    DomeSlice above;
    above.first = analysis.springline_course; // below it each stage is a plumb wall
    const auto stage_with_forms = [&](DomeSlice what) {
        return [&, what](int last) mutable {
            what.propped = forms_in(analysis.forms_until, last);
            return building_stage(courses, what, last);
        };
    };
    seek_weakest(stage_with_forms(above), "", above.first, top, free);
    int last_form = 0;
    for (const auto& [id, until] : analysis.forms_until)
        last_form = std::max(last_form, std::min(until, top));
    seek_weakest([&](int last) { return building_stage(courses, above, last); }, "", above.first,
                 last_form - 1, on_form);
    for (const StripStatics& strip : analysis.statics.strips) {
        if (strip.beside.empty())
            continue;
        DomeSlice beside = above;
        beside.beside = strip.beside;
        // Until its form is struck the wall beside an opening leans on it.
        const auto form = analysis.forms_until.find(strip.beside);
        const int until = form == analysis.forms_until.end() ? 0 : std::min(form->second, top);
        seek_weakest(stage_with_forms(beside), strip.beside, std::max(above.first, until), top,
                     free);
        seek_weakest([&](int last) { return building_stage(courses, beside, last); }, strip.beside,
                     above.first, until - 1, on_form);
    }
    // The forms hold until they are struck: then what the wall bears without them decides.
    const bool leans = free.safety >= 1 && on_form.safety < 1;
    const double worst = leans ? on_form.safety : free.safety;
    const int at = free.last;
    const std::string where = free.beside.empty() ? "" : " beside '" + free.beside + "'";
    found.formula =
        "geometric factor of safety of the courses from the springline to each course, "
        "its ring closed; where that is no less than the limit, of those whose forms still "
        "stand as if these were not there, if that is less than it";
    found.source = source_text(least);
    judge_ratio(found, worst, least.value, least.value);
    found.message = "While it is built, the forms in that its sheets keep, '" + dome.id +
                    "' is weakest" + where + " with course " + std::to_string(at) +
                    " laid: the line of thrust would keep within joints " +
                    three_digits(free.safety) + " times narrower, that ring closed.";
    if (free.safety < 1) {
        std::string broken; // by what; such a ring cannot be closed
        const std::set<std::string> in = forms_in(analysis.forms_until, at);
        for (const RingGap& gap : courses[static_cast<std::size_t>(at - 1)].gaps)
            if (in.count(gap.by) == 0)
                broken += (broken.empty() ? " '" : ", '") + gap.by + "'";
        found.message = "With course " + std::to_string(at) + " laid" +
                        (broken.empty() ? " and its ring closed" : ", its ring open at" + broken) +
                        ", no line of thrust keeps within the wall of '" + dome.id + "'" + where +
                        ".";
        found.remedy = "Prop it from inside from there on until the next rings are closed.";
    }
    if (on_form.safety < 1) { // the form holds the jambs apart until it is struck
        found.message += " Until the forms are struck the wall" +
                         (on_form.beside.empty() ? "" : " beside '" + on_form.beside + "'") +
                         " leans on them: with course " + std::to_string(on_form.last) +
                         " laid no line of thrust keeps within the wall without them (" +
                         three_digits(on_form.safety) + ").";
        if (leans)
            found.verdict = Verdict::advice;
        found.remedy += std::string(found.remedy.empty() ? "" : " ") + "Brace the form" +
                        (on_form.beside.empty() ? "s" : " of '" + on_form.beside + "'") +
                        " against being pressed together and into the room, and strike none "
                        "sooner than its sheet says.";
    }
    leave_joined(found, joined_domes(courses));
    return {found};
}

} // namespace coilwright
