// The shape of a dome against rules of thumb.
#include "geometry/checks/held_against.hpp"
#include "geometry/checks/trade_findings.hpp"

#include <algorithm>
#include <limits>

namespace coilwright {

namespace {

void check_rise(const Design& design, const DomeForm& form, const Dome& dome,
                std::vector<Finding>& findings) {
    const Limit* about = find_limit(design.limits, "rise.rise_to_diameter");
    const Limit* slack = find_limit(design.limits, "rise-slack.share");
    if (!about || !slack)
        return;
    const Wording wording{design.unit};
    Limit limit = *about;
    limit.value *= 1 - slack->value;
    const double across = 2 * form.profile.half_span;
    const double ratio = form.profile.rise / across;
    Finding found = held_against("dome-rise", {"dome." + form.id, dome.profile.place}, ratio,
                                 FindingUnit::ratio, Bound::at_least, limit, Verdict::advice);
    found.message = "'" + form.id + "' rises " + wording.length(form.profile.rise) +
                    " over its springline and is " + wording.length(across) +
                    " across: domes of bags are built about as tall as wide (" +
                    fixed_text(limit.value, 2) + " of the width at least).";
    if (found.verdict != Verdict::holds)
        found.remedy = "Take a pointed profile or a catenary with a rise of " +
                       wording.length_up(limit.value * across) + ".";
    findings.push_back(std::move(found));
}

void check_coil(const BuildingPlan& plan, const DomeForm& form, std::vector<Finding>& findings) {
    const Design& design = plan.design;
    const Limit* share = find_limit(design.limits, "coil.radius_share");
    if (!share)
        return;
    const Wording wording{design.unit};
    double least = std::numeric_limits<double>::infinity();
    int number = 0;
    for (const Course& course : plan.schedule.courses)
        for (const Ring& ring : course.rings)
            if (ring.dome == form.id && ring.kind == RingKind::ring && ring.inside_radius < least) {
                least = ring.inside_radius;
                number = course.number;
            }
    if (number == 0)
        return;
    Limit limit = *share;
    limit.value *= form.width;
    Finding found = held_against("coil-radius", {"dome." + form.id, design.course.place}, least,
                                 FindingUnit::metre, Bound::at_least, limit, Verdict::advice);
    found.message = "The tightest ring of '" + form.id + "', course " + std::to_string(number) +
                    ", has an inside radius of " + wording.length(least) +
                    "; a tube of this width bends to " + wording.length(limit.value) + ".";
    if (found.verdict != Verdict::holds)
        found.remedy = "Set least_inside_radius = " + wording.length_up(limit.value) +
                       " in [course]: above, solid courses close the dome.";
    findings.push_back(std::move(found));
}

} // namespace

std::vector<Finding> shape_practice_findings(const BuildingPlan& plan) {
    std::vector<Finding> findings;
    for (const DomeForm& form : plan.schedule.building.domes)
        if (const Dome* dome = find_dome(plan.design, form.id)) {
            check_rise(plan.design, form, *dome, findings);
            check_coil(plan, form, findings);
        }
    return findings;
}

std::vector<Finding> trade_findings(const BuildingPlan& plan) {
    std::vector<Finding> all;
    for (const auto check :
         {shape_practice_findings, ground_practice_findings, seismic_practice_findings,
          opening_practice_findings, buttress_practice_findings, work_practice_findings}) {
        const std::vector<Finding> some = check(plan);
        all.insert(all.end(), some.begin(), some.end());
    }
    return all;
}

} // namespace coilwright
