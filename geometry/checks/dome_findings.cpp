#include "geometry/checks/dome_findings.hpp"

#include "geometry/checks/statics_finding.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

Finding of_dome(const Design& design, const DomeForm& dome, const std::string& code) {
    return statics_finding(code, "dome." + dome.id, find_dome(design, dome.id)->profile.place);
}

Finding joint_sliding(const Design& design, const DomeForm& dome, const DomeStatics& statics) {
    Finding found = of_dome(design, dome, "joint-sliding");
    const StripStatics* worst = nullptr;
    double needed = 0;
    for (const StripStatics& strip : statics.strips) {
        if (strip.friction.line.undecided)
            continue;
        const double here = strip.friction.line.stands ? strip.friction.friction : unlimited;
        if (!worst || here > needed) {
            worst = &strip;
            needed = here;
        }
    }
    found.formula = "friction of the joints / the least friction with which any line of thrust and "
                    "ring compression balance every course";
    found.source = joint_sliding_source(design);
    if (!worst) {
        found.message = "No balance of '" + dome.id +
                        "' is found at all, so what friction it needs is not known.";
        return found;
    }
    judge_ratio(found, needed > 0 ? design.joint.friction / needed : unlimited, 1,
                design.joint.factor);
    if (!(needed < unlimited)) {
        found.message = "No friction would keep the joints of '" + dome.id + "' " +
                        strip_words(worst->beside) +
                        " from sliding: no line of thrust keeps within the wall there.";
        found.remedy = "First mend geometric-safety " + strip_words(worst->beside) + ".";
        return found;
    }
    found.message =
        "The joints of '" + dome.id + "' " + strip_words(worst->beside) +
        " need a friction of at least " + three_digits(needed) +
        ", along the line of thrust that needs least; they are taken to have " +
        three_digits(design.joint.friction) +
        ". The rings carry the rest: a course that steps in slides as soon as its ring is "
        "open.";
    soften_default(found, design.joint.friction_stated, "friction of the joints");
    if (found.verdict != Verdict::holds)
        found.remedy = "Measure the friction of two filled bags with the wire between them; " +
                       three_digits(up_to_three_digits(needed * design.joint.factor)) +
                       " would do.";
    return found;
}

Finding free_corbel(const Design& design, const DomeForm& dome, const DomeAnalysis& analysis) {
    Finding found = of_dome(design, dome, "free-corbel");
    const auto worst = std::min_element(analysis.levers.begin(), analysis.levers.end());
    found.unit = FindingUnit::metre;
    found.limit = 0;
    found.formula =
        "centre of mass of what is laid above, less the inner edge of the flat under it";
    found.source = "Benvenuto & Corradi 1987-90; Rovero & Tonietti 2012-14 (from memory)";
    if (worst == analysis.levers.end())
        return found;
    found.value = *worst;
    found.verdict = *worst >= 0 ? Verdict::holds : Verdict::advice;
    const std::vector<WallCourse>& courses = analysis.statics.courses;
    int first = 1; // the least height reached at which something tips
    for (bool lies = true; lies && first < static_cast<int>(courses.size()); ++first) {
        const std::vector<double> levers = corbel_levers(corbel_courses(courses, first));
        lies = *std::min_element(levers.begin(), levers.end()) >= 0;
    }
    --first;
    found.message = "Without its rings what is laid of '" + dome.id +
                    "' would fall in from course " + std::to_string(first) +
                    " on, over the joint under course " +
                    std::to_string(worst - analysis.levers.begin() + 1) + " by up to " +
                    length_text(-*worst, design.unit) +
                    ". So does every ordinary dome of bags: it stands by its rings alone.";
    found.remedy = "Close each ring before you stop, prop what is open at a form, and let nobody "
                   "stand below an open ring.";
    return found;
}

Finding crushing(const Design& design, const DomeForm& dome, const DomeAnalysis& analysis) {
    Finding found = of_dome(design, dome, "fill-crushing");
    const JointCheck* worst = nullptr;
    const StripStatics* in = nullptr;
    double least = unlimited;
    bool by_ring = false;
    std::vector<SlidingStrip> sliding;
    bool slides = false; // the strip in which it is worst
    for (std::size_t i = 0; i < analysis.pressures.size(); ++i) {
        const bool stands = analysis.frictions[i] <= design.joint.friction;
        if (!stands)
            sliding.push_back(
                {strip_words(analysis.statics.strips[i].beside), analysis.frictions[i]});
        for (const JointCheck& joint : analysis.pressures[i].joints) {
            const double most = std::max(joint.pressure, joint.hoop_pressure);
            if (most > 0 && joint.strength / most < least) {
                least = joint.strength / most;
                worst = &joint;
                in = &analysis.statics.strips[i];
                by_ring = joint.hoop_pressure > joint.pressure;
                slides = !stands;
            }
        }
    }
    const Limit& limit = limit_of(design, "crushing.least");
    found.formula = "strength of the fill / (N/(d - 2e) in a joint, or ring force / tube section), "
                    "by the line at the friction of the joints whose worst joint has most strength "
                    "to spare";
    found.source = source_text(limit) +
                   "; strength as the design states it, else Dunbar & Wipplinger 2006, sand-filled";
    if (!worst) {
        found.message =
            "No line of thrust keeps within '" + dome.id + "', so no pressure is known.";
        return found;
    }
    judge_ratio(found, least, limit.value, limit_of(design, "crushing.good").value);
    found.message = (by_ring ? "The ring of course " : "The joint under course ") +
                    std::to_string(worst->course) + " of '" + dome.id + "' " +
                    strip_words(in->beside) + " is pressed with " +
                    stress_text(std::max(worst->pressure, worst->hoop_pressure), design.unit) +
                    " by the line of thrust that asks least of it; its fill is taken to bear " +
                    stress_text(worst->strength, design.unit) + ".";
    const double pressure = std::max(worst->pressure, worst->hoop_pressure);
    soften_unstated(found, design, worst->course, pressure,
                    !by_ring && !design.joint.friction_stated);
    if (found.verdict != Verdict::holds)
        found.remedy = stronger_fill(design, pressure);
    if (found.verdict == Verdict::advice && !by_ring && !design.joint.friction_stated)
        found.remedy += " Measure the friction of two filled bags with the wire between them: more "
                        "of it lets the line run nearer to the middle.";
    if (slides && !by_ring) {
        leave_edge_pressure(found, "The joint under course " + std::to_string(worst->course) +
                                       " of '" + dome.id + "' " + strip_words(in->beside));
        found.remedy.clear(); // it told what the fill would have to bear
    }
    leave_sliding(found, design, sliding, slides);
    return found;
}

/// The same factor where no joint carries more shear than its friction, as a sentence: Heyman's has
/// none that slides.
std::string with_friction(const Design& design, const DomeStatics& statics) {
    const StripStatics& worst = statics.strips[statics.worst];
    DomeSlice what;
    if (!worst.beside.empty())
        what.beside = worst.beside;
    what.friction = design.joint.friction;
    const CentredThrust centred = centred_share(dome_slice(statics.courses, what));
    const std::string friction = three_digits(design.joint.friction);
    return centred.line.stands && centred.share > 0
               ? " Where no joint may slide at the friction taken, " + friction +
                     ", the factor is " + fixed_text(1 / centred.share, 2) + "."
               : " No line of thrust does at the friction taken, " + friction + ".";
}

} // namespace

Finding geometric_safety(const Design& design, const DomeForm& dome, const DomeStatics& statics) {
    const Limit& least = limit_of(design, "geometric-safety.least");
    const double good = limit_of(design, "geometric-safety.good").value;
    Finding found = of_dome(design, dome, "geometric-safety");
    found.unit = FindingUnit::ratio;
    found.limit = least.value;
    found.source = source_text(least);
    found.formula = "half contact / greatest distance of the most centred line of thrust from the "
                    "middle of a joint";
    if (statics.strips.empty()) {
        found.message = "A course of '" + dome.id +
                        "' finds nothing to lie on, so there is no line of thrust to look for.";
        found.remedy = "First mend the course without bearing.";
        return found;
    }
    const StripStatics& worst = statics.strips[statics.worst];
    const double safety = worst.centred.safety();
    judge_ratio(found, safety, least.value, good);
    if (safety < 1)
        found.message = "No line of thrust keeps within the wall of '" + dome.id + "' " +
                        strip_words(worst.beside) +
                        (safety > 0 ? "; the best one would need joints " +
                                          fixed_text(1 / safety, 2) + " times as wide."
                                    : ".");
    else
        found.message = "The most centred line of thrust of '" + dome.id + "' " +
                        strip_words(worst.beside) + " would keep within joints " +
                        fixed_text(safety, 2) +
                        " times narrower, with every unbroken ring closed and pressed.";
    if (found.verdict != Verdict::holds)
        found.remedy =
            "A higher rise, a wider tube or a narrower opening brings the line nearer to "
            "the middle of the wall.";
    return found;
}

std::vector<Finding> dome_findings(const Design& design, const DomeForm& dome,
                                   const DomeAnalysis& analysis) {
    std::vector<Finding> findings{geometric_safety(design, dome, analysis.statics)};
    if (analysis.statics.strips.empty())
        return findings;
    findings.front().message += with_friction(design, analysis.statics);
    const std::vector<std::string> joined = joined_domes(analysis.statics.courses);
    findings.push_back(joint_sliding(design, dome, analysis.statics));
    findings.push_back(crushing(design, dome, analysis));
    for (Finding& finding : findings)
        leave_joined(finding, joined);
    findings.push_back(free_corbel(design, dome, analysis));
    return findings;
}

} // namespace coilwright
