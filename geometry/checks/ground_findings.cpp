// Thrust and weight of a dome as they come to the ground.
#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/statics/materials.hpp"
#include "geometry/statics/stem_stability.hpp"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace coilwright {

namespace {

class GroundCheck {
public:
    GroundCheck(const Design& design, const DomeForm& dome, const DomeAnalysis& analysis)
        : design_(design), dome_(dome), analysis_(analysis) {}

    std::vector<Finding> run() {
        std::vector<Finding> findings;
        if (analysis_.springline_course > 1)
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

    struct Stem {
        std::string beside;
        std::optional<StemStability> stability; // none where the strip has no line
        double thrust = 0, friction = unlimited;
    };

    /// In a strip, and the thrust on its stem: what an opening leaves of the stem's courses carries
    /// what it leaves of the dome's.
    Stem stem_of(const std::string& beside) const {
        std::vector<WallCourse> courses = analysis_.statics.courses;
        LineAtFriction found = analysis_.springline;
        if (!beside.empty()) {
            DomeSlice what;
            what.beside = beside;
            found = thrust_at_friction(design_, courses, dome_, what);
            const std::vector<double> kept = kept_beside(courses, beside);
            for (std::size_t i = 0; i < courses.size() && i < kept.size(); ++i)
                courses[i].weight *= kept[i];
        }
        const ThrustLine& line = found.line;
        if (!line.stands || line.joints.empty())
            return {beside, {}, 0, unlimited};
        const JointThrust& above = line.joints.back();
        return {
            beside,
            stem_stability(courses, analysis_.springline_course, above, design_.ground.friction),
            above.thrust(), found.friction};
    }

    void add_stem(std::vector<Finding>& findings) const {
        StemStability stem{0, unlimited, unlimited};
        double thrust = 0;
        std::string tips_beside, slides_beside;
        bool tips_slid = false; // at more than the friction of the joints
        std::vector<SlidingStrip> sliding;
        bool any = false;
        for (const StripStatics& strip : analysis_.statics.strips) {
            const Stem found = stem_of(strip.beside);
            const bool slid = !(found.friction <= design_.joint.friction);
            if (slid)
                sliding.push_back({strip_words(strip.beside), found.friction});
            if (!found.stability)
                continue;
            any = true;
            if (found.stability->overturning < stem.overturning) {
                stem.overturning = found.stability->overturning;
                tips_beside = strip.beside;
                tips_slid = slid;
            }
            if (found.stability->sliding < stem.sliding) {
                stem.sliding = found.stability->sliding;
                slides_beside = strip.beside;
                thrust = found.thrust;
            }
        }
        const auto where = [](const std::string& beside) {
            return beside.empty() ? std::string() : " beside '" + beside + "'";
        };
        const bool known = !bank_against_wall(design_) || bank_known(design_);
        const std::string push = "the least thrust at the springline, " +
                                 force_text(thrust, design_.unit) + " on a radian,";
        Finding slides = of_dome("stem-sliding");
        slides.formula = "friction on the ground x weight of dome and stem / least thrust at the "
                         "springline at the friction of the joints; the soil's help is left out";
        slides.source = ground_sliding_source(design_);
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
                       " resists being tipped by the least thrust at the springline " +
                       three_digits(stem.overturning) + " times.";
        if (!any) {
            for (Finding* finding : {&slides, &tips}) {
                finding->verdict = Verdict::not_judged;
                finding->message = "No thrust at the springline of '" + dome_.id + "' is known.";
            }
        } else if (slides.verdict != Verdict::holds)
            slides.remedy =
                "A higher rise pushes less; more buried courses and buttresses hold more.";
        if (any && tips.verdict != Verdict::holds)
            tips.remedy = "Lower the springline, raise the rise, lay a wider tube below, or stand "
                          "buttresses against the stem.";
        leave_sliding(slides, design_, sliding, false); // friction on the ground decides
        leave_sliding(tips, design_, sliding, tips_slid);
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
        bool slides = false; // the strip of the most
        std::vector<SlidingStrip> sliding;
        for (std::size_t i = 0; i < analysis_.ground_pressures.size(); ++i) {
            const std::string& strip = analysis_.statics.strips[i].beside;
            const bool slid = !(analysis_.frictions[i] <= design_.joint.friction);
            if (slid)
                sliding.push_back({strip_words(strip), analysis_.frictions[i]});
            for (const JointCheck& joint : analysis_.ground_pressures[i].joints)
                if (joint.course == 1 && spread(joint) > most) {
                    most = spread(joint);
                    beside = strip;
                    slides = slid;
                }
        }
        found.unit = FindingUnit::pascal;
        found.formula =
            "N/(d - 2e + g) under course 1, by the line of thrust at the friction of the joints "
            "that asks least of the ground; "
            "g: depth of the gravel under it, which spreads 1 in 2 to either side";
        found.source = "Meyerhof 1953; capacity by [ground] bearing_capacity";
        if (most <= 0) {
            found.message = "No line of thrust reaches the ground.";
            return found;
        }
        found.value = most;
        const std::string ground = "The ground under '" + dome_.id + "'" +
                                   (beside.empty() ? "" : " beside '" + beside + "'");
        found.message = ground + " is pressed with " + pressure_text(most, design_.unit) +
                        " by the line of thrust that asks least of it";
        if (!design_.ground.bearing_capacity) {
            const Limit& presumptive = limit_of(design_, "soil.presumptive");
            found.message += "; what it bears is not stated.";
            const auto presumed = [&](const char* of) {
                return pressure_text(limit_of(design_, of).value, design_.unit);
            };
            const double best =
                std::max({presumptive.value, limit_of(design_, "soil.presumptive_sand").value,
                          limit_of(design_, "soil.presumptive_gravel").value});
            found.remedy =
                "State [ground] bearing_capacity" +
                (most > best && !slides ? ": " + pressure_text(most, design_.unit) +
                                              " is more than all that codes presume, "
                                        : ". Codes presume ") +
                presumed("soil.presumptive") + " of clay and silt, " +
                presumed("soil.presumptive_sand") + " of sands and gravels with fines and " +
                presumed("soil.presumptive_gravel") + " of gravel where nothing better is known (" +
                source_text(presumptive) + ").";
            if (slides)
                leave_edge_pressure(found, ground);
            leave_sliding(found, design_, sliding, slides);
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
        if (slides)
            leave_edge_pressure(found, ground);
        leave_sliding(found, design_, sliding, slides);
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
        soften_unstated(found, design_, worst->course, worst->pressure);
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
        const Limit& best = limit_of(design_, "fill-strength.best");
        const double strength = worst.strength * times;
        return (strength > best.value
                    ? "No published fill bears the " + least_stress_text(strength, design_.unit) +
                          " that would do (the best " + stress_text(best.value, design_.unit) +
                          "): narrow"
                    : "A fill that bears " + least_stress_text(strength, design_.unit) +
                          ", as tests show, would do; or narrow") +
               " the openings beside it, or take a tube " +
               three_digits(up_to_three_digits(times)) + " times as wide.";
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
