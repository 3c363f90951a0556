#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/statics/buttress_stability.hpp"
#include "geometry/statics/materials.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

/// Degrees either way between two directions, 0 to 180.
double apart(double a, double b) {
    const double off = std::fmod(std::abs(a - b), 360);
    return std::min(off, 360 - off);
}

/// Of the circle, radians, that pushes on a pier: its width, and half of each gap beside it.
double part_of(const ButtressForm& pier, const DomeForm& dome,
               const std::vector<WallCourse>& courses) {
    const double r = dome.profile.half_span + dome.width / 2;
    const double own = half_angle_degrees(std::min(pier.half_width, 0.99 * r), r);
    const double at = clockwise_degrees(dome.datum, pier.bearing);
    double degrees = 2 * own;
    std::vector<std::string> counted;
    for (const WallCourse& course : courses)
        for (const RingGap& gap : course.gaps) {
            if (gap.kind() != GapKind::strip || gap.by == pier.id ||
                std::find(counted.begin(), counted.end(), gap.by) != counted.end())
                continue;
            const double half = half_gap_degrees(gap, r);
            const double between = apart(at, gap.middle) - own - half;
            if (between * radians_per_degree * r > dome.width)
                continue;
            degrees += half;
            counted.push_back(gap.by);
        }
    return degrees * radians_per_degree;
}

} // namespace

std::vector<Finding> buttress_findings(const Design& design, const BuildingForm& building,
                                       const DomeForm& dome, const DomeAnalysis& analysis) {
    std::vector<Finding> findings;
    const ThrustLine& line = analysis.springline.line;
    const JointThrust above = line.stands ? line.joints.back() : JointThrust{};
    std::vector<SlidingStrip> sliding;
    if (!(analysis.springline.friction <= design.joint.friction))
        sliding.push_back({strip_words(""), analysis.springline.friction});
    const Limit& least = limit_of(design, "overturning.least");
    for (const ButtressForm& pier : building.buttresses) {
        if (pier.dome != dome.id || pier.reveal)
            continue;
        const auto table = std::find_if(design.buttresses.begin(), design.buttresses.end(),
                                        [&](const Buttress& b) { return b.id == pier.table; });
        const SourcePlace place = table == design.buttresses.end() ? SourcePlace{} : table->place;
        const double part = part_of(pier, dome, analysis.statics.courses);
        const DomePush push{above.thrust() * part, above.point.y(), above.normal * part,
                            above.point.x()};
        const PierStability stability = pier_stability(design, dome, pier, push);
        const std::string pushed =
            "the thrust of its part of the dome, " + force_text(push.thrust, design.unit);
        Finding slides = statics_finding("buttress-sliding", "buttress." + pier.id, place);
        judge_ratio(slides, stability.sliding, 1, design.joint.factor);
        slides.formula =
            "friction on the ground x (W + V)/H, the soil's help left out: W the pier's weight " +
            force_text(stability.mass.weight, design.unit) + "; V and H of " +
            three_digits(part / radians_per_degree) + " degrees of the dome, its part, V " +
            force_text(push.vertical, design.unit) + ", H " + force_text(push.thrust, design.unit);
        slides.source = ground_sliding_source(design);
        slides.message = "'" + pier.id + "' with the wall above it resists sliding by " + pushed +
                         ", " + three_digits(stability.sliding) + " times.";
        soften_ground_friction(slides, design);
        Finding tips = statics_finding("buttress-overturning", "buttress." + pier.id, place);
        judge_ratio(tips, stability.overturning, least.value,
                    limit_of(design, "overturning.good").value);
        const auto arm = [&](double metres) { return length_text(metres, design.unit); };
        tips.formula =
            "(W a + V b)/(H h) about the pier's toe: W " +
            force_text(stability.mass.weight, design.unit) + ", a " +
            arm(stability.toe - stability.mass.centre) + "; of " +
            three_digits(part / radians_per_degree) + " degrees of the dome, its part: V " +
            force_text(push.vertical, design.unit) + ", b " + arm(stability.toe - push.radius) +
            ", H " + force_text(push.thrust, design.unit) + ", h " +
            arm(push.height - dome.course_bottom(1));
        tips.source = source_text(least);
        tips.message = "'" + pier.id + "' with the wall above it resists being tipped by " +
                       pushed + ", " + three_digits(stability.overturning) + " times.";
        if (slides.verdict != Verdict::holds)
            slides.remedy = "A wider or longer pier, or more buried courses.";
        if (tips.verdict != Verdict::holds)
            tips.remedy = "A longer projection at the floor.";
        for (Finding* finding : {&slides, &tips}) {
            if (!line.stands) {
                finding->value.reset();
                finding->verdict = Verdict::not_judged;
                finding->message =
                    "The thrust of '" + dome.id + "' on '" + pier.id + "' is not known.";
            }
            leave_sliding(*finding, design, sliding, finding == &tips);
        }
        if (bank_against_wall(design) && !bank_known(design))
            for (Finding* finding : {&slides, &tips})
                finding->verdict = Verdict::not_judged;
        findings.push_back(slides);
        findings.push_back(tips);
    }
    return findings;
}

} // namespace coilwright
