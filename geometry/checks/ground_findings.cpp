// Thrust and weight of a dome as they come to the ground.
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/statics/materials.hpp"
#include "geometry/statics/stem_stability.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace coilwright {

namespace {

class GroundCheck {
public:
    GroundCheck(const Design& design, const DomeForm& dome, const DomeAnalysis& analysis)
        : design_(design), dome_(dome), analysis_(analysis) {}

    std::vector<Finding> run() {
        std::vector<Finding> findings;
        if (analysis_.springline.stands && analysis_.springline_course > 1)
            add_stem(findings);
        findings.push_back(ground_pressure());
        if (!analysis_.statics.piers.empty())
            findings.push_back(pier_pressure());
        for (Finding& finding : findings)
            if (finding.verdict != Verdict::not_judged)
                leave_joined(finding, joined_domes(analysis_.statics.courses));
        return findings;
    }

private:
    const Design& design_;
    const DomeForm& dome_;
    const DomeAnalysis& analysis_;

    Finding of_dome(const std::string& code) const {
        return statics_finding(code, "dome." + dome_.id, find_dome(design_, dome_.id)->place);
    }

    /// In a strip, and the thrust on its stem: what an opening leaves of the stem's courses carries
    /// what it leaves of the dome's. None where the strip has no line, or nothing pushes.
    std::optional<std::pair<StemStability, double>> stem_of(const std::string& beside) const {
        std::vector<WallCourse> courses = analysis_.statics.courses;
        ThrustLine line = analysis_.springline;
        if (!beside.empty()) {
            DomeSlice what;
            what.beside = beside;
            line = thrust_at_friction(design_, courses, dome_, what);
            const std::vector<double> kept = kept_beside(courses, beside);
            for (std::size_t i = 0; i < courses.size() && i < kept.size(); ++i)
                courses[i].weight *= kept[i];
        }
        if (!line.stands || line.joints.empty())
            return std::nullopt;
        const JointThrust& above = line.joints.back();
        return std::pair{
            stem_stability(courses, analysis_.springline_course, above, design_.ground.friction),
            above.thrust()};
    }

    void add_stem(std::vector<Finding>& findings) const {
        StemStability stem{0, unlimited, unlimited};
        double thrust = 0;
        std::string tips_beside, slides_beside;
        for (const StripStatics& strip : analysis_.statics.strips) {
            const auto found = stem_of(strip.beside);
            if (!found)
                continue;
            if (found->first.overturning < stem.overturning) {
                stem.overturning = found->first.overturning;
                tips_beside = strip.beside;
            }
            if (found->first.sliding < stem.sliding) {
                stem.sliding = found->first.sliding;
                slides_beside = strip.beside;
                thrust = found->second;
            }
        }
        const auto where = [](const std::string& beside) {
            return beside.empty() ? std::string() : " beside '" + beside + "'";
        };
        const bool known = !bank_against_wall(design_) || bank_known(design_);
        const std::string push =
            "a thrust of " + force_text(thrust, design_.unit) + " on a radian at the springline";
        Finding slides = of_dome("stem-sliding");
        slides.formula = "friction on the ground x weight of dome and stem / least thrust at the "
                         "springline at the friction of the joints; the soil's help is left out";
        slides.source = "balance; friction and factor by [ground] and [joint], or a judgement "
                        "without source (0.4, 1.5)";
        judge_ratio(slides, stem.sliding, 1, design_.joint.factor);
        slides.message = "On the ground '" + dome_.id + "'" + where(slides_beside) + " resists " +
                         push + " " + three_digits(stem.sliding) + " times, at friction " +
                         three_digits(design_.ground.friction) + ".";
        soften_ground_friction(slides, design_);
        Finding tips = of_dome("stem-overturning");
        const Limit& least = limit_of(design_, "overturning.least");
        tips.formula =
            "moment of the weights about the outer end of the lowest flat / of the least "
            "thrust at the springline at the friction of the joints; stem as one free wall, "
            "without "
            "buttresses";
        tips.source = source_text(least);
        judge_ratio(tips, stem.overturning, least.value,
                    limit_of(design_, "overturning.good").value);
        tips.message = "As a free wall the stem of '" + dome_.id + "'" + where(tips_beside) +
                       " resists being tipped by the thrust at the springline " +
                       three_digits(stem.overturning) + " times.";
        if (slides.verdict != Verdict::holds)
            slides.remedy =
                "A higher rise pushes less; more buried courses and buttresses hold more.";
        if (tips.verdict != Verdict::holds)
            tips.remedy = "Lower the springline, raise the rise, lay a wider tube below, or stand "
                          "buttresses against the stem.";
        if (!known)
            for (Finding* finding : {&slides, &tips}) {
                finding->verdict = Verdict::not_judged;
                finding->message += " The bank outside is left out: what it is of is not stated.";
                finding->remedy = "State [ground] unit_weight and friction_angle.";
            }
        findings.push_back(slides);
        findings.push_back(tips);
    }

    /// Pressure under the gravel of the trench.
    double spread(const JointCheck& joint) const {
        const double carries = joint.normal / joint.pressure;
        return joint.normal / (carries + design_.trench.gravel_depth);
    }

    Finding ground_pressure() const {
        Finding found = of_dome("ground-pressure");
        double most = 0;
        std::string beside;
        for (std::size_t i = 0; i < analysis_.ground_pressures.size(); ++i)
            for (const JointCheck& joint : analysis_.ground_pressures[i].joints)
                if (joint.course == 1 && spread(joint) > most) {
                    most = spread(joint);
                    beside = analysis_.statics.strips[i].beside;
                }
        found.unit = FindingUnit::pascal;
        found.formula =
            "N/(d - 2e + g) under course 1, by the line of thrust that asks least of it, at the "
            "friction of the joints where one stands so; "
            "g: depth of the gravel under it, which spreads 1 in 2 to either side";
        found.source = "Meyerhof 1953; capacity by [ground] bearing_capacity";
        if (most <= 0) {
            found.message = "No line of thrust reaches the ground.";
            return found;
        }
        found.value = most;
        found.message = "The ground under '" + dome_.id + "'" +
                        (beside.empty() ? "" : " beside '" + beside + "'") + " is pressed with " +
                        pressure_text(most, design_.unit);
        if (!design_.ground.bearing_capacity) {
            const Limit& presumptive = limit_of(design_, "soil.presumptive");
            found.message += "; what it bears is not stated.";
            const auto presumed = [&](const char* of) {
                return pressure_text(limit_of(design_, of).value, design_.unit);
            };
            found.remedy =
                "State [ground] bearing_capacity. Codes presume " + presumed("soil.presumptive") +
                " of clay and silt, " + presumed("soil.presumptive_sand") +
                " of sands and gravels with fines and " + presumed("soil.presumptive_gravel") +
                " of gravel where nothing better is known (" + source_text(presumptive) + ").";
            return found;
        }
        const double capacity = *design_.ground.bearing_capacity;
        found.limit = capacity;
        found.verdict = most <= capacity ? Verdict::holds : Verdict::fails;
        found.message += "; it bears " + pressure_text(capacity, design_.unit) + ".";
        if (found.verdict == Verdict::fails)
            found.remedy =
                "Lay the lowest courses of a wider tube, or two side by side, on deeper gravel, "
                "which spreads the weight.";
        return found;
    }

    Finding pier_pressure() const {
        Finding found = of_dome("pier-pressure");
        const PierCheck* worst = nullptr;
        for (const PierCheck& pier : analysis_.statics.piers)
            if (!worst || pier.strength / pier.pressure < worst->strength / worst->pressure)
                worst = &pier;
        const Limit& limit = limit_of(design_, "crushing.least");
        judge_ratio(found, worst->strength / worst->pressure, limit.value,
                    limit_of(design_, "crushing.good").value);
        found.formula =
            "strength of the fill / (own load and half of that over each opening beside "
            "it, on its contact)";
        found.source = source_text(limit);
        found.message = "The wall from '" + worst->from + "' to '" + worst->to + "' of '" +
                        dome_.id + "', " + length_text(worst->length, design_.unit) +
                        " long, is pressed with " + stress_text(worst->pressure, design_.unit) +
                        " at course " + std::to_string(worst->course) +
                        "; its fill is taken to bear " +
                        stress_text(worst->strength, design_.unit) + ".";
        soften_unstated(found, design_, worst->course);
        if (found.verdict != Verdict::holds)
            found.remedy =
                pier_remedy(*worst, limit_of(design_, "crushing.good").value / *found.value);
        return found;
    }

    /// Turned apart, openings leave each pier its equal share of the wall and no more.
    std::string pier_remedy(const PierCheck& worst, double times) const {
        double share = 0;
        for (const WallCourse& course : analysis_.statics.courses)
            if (course.number == worst.course && !course.gaps.empty())
                share = pi * (course.inside + course.outside) * (1 - course.open_share) /
                        static_cast<double>(course.gaps.size());
        const double wanted = worst.length * times;
        if (wanted <= share)
            return "Turn the openings apart: " + length_text(wanted, design_.unit) +
                   " of wall would do.";
        return "A fill that bears " + stress_text(worst.strength * times, design_.unit) +
               ", as tests show, would do, or a tube " + three_digits(times) + " times as wide.";
    }
};

} // namespace

std::vector<Finding> ground_findings(const Design& design, const DomeForm& dome,
                                     const DomeAnalysis& analysis) {
    if (analysis.statics.strips.empty())
        return {};
    return GroundCheck(design, dome, analysis).run();
}

} // namespace coilwright
