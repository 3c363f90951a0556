#include "geometry/plan/plan_building.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/practice.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// What to look at first.
int rank(Verdict verdict) {
    switch (verdict) {
    case Verdict::fails:
        return 0;
    case Verdict::advice:
        return 1;
    case Verdict::not_judged:
        return 2;
    case Verdict::holds:
        return 3;
    }
    return 4;
}

/// Elements that lay() lays but that the models and the crew book do not show yet: a package without
/// them would be a wrong one.
std::vector<Diagnostic> refuse_what_is_not_shown_yet(const Design& design) {
    std::vector<Diagnostic> faults;
    const auto refuse = [&](SourcePlace place, const std::string& subject, const std::string& what) {
        Diagnostic fault;
        fault.code = "not-laid-yet";
        fault.place = place;
        fault.subject = subject;
        fault.message = "This version cannot lay " + what + " yet.";
        fault.allowed = "domes with openings";
        fault.example = "leave it out";
        faults.push_back(fault);
    };
    for (const Tunnel& tunnel : design.tunnels)
        refuse(tunnel.place, "tunnel." + tunnel.id, "tunnels");
    for (const Buttress& buttress : design.buttresses)
        refuse(buttress.place, "buttress." + buttress.id, "buttresses");
    for (const Join& join : design.joins)
        refuse(join.place, "join." + join.id, "joined domes");
    for (const Sleeve& sleeve : design.sleeves)
        refuse(sleeve.place, "sleeve." + sleeve.id, "sleeves");
    for (const Opening& opening : design.openings) {
        if (opening.use == OpeningUse::niche)
            refuse(opening.place, "opening." + opening.id, "niches");
        if (opening.reveal_plumb)
            refuse(opening.place, "opening." + opening.id, "plumb reveals");
        if (opening.head.laid == HeadLaid::fan)
            refuse(opening.head.place, "opening." + opening.id + ".head", "fan heads");
    }
    return faults;
}

} // namespace

void put_worst_first(std::vector<Finding>& findings) {
    std::stable_sort(
        findings.begin(), findings.end(),
        [](const Finding& a, const Finding& b) { return rank(a.verdict) < rank(b.verdict); });
}

BuildingPlan plan_building(Design design, std::vector<Diagnostic> diagnostics) {
    BuildingPlan plan;
    Fit fitted = fit(design);
    plan.design = std::move(fitted.design);
    plan.diagnostics = std::move(diagnostics);
    const std::vector<Diagnostic> faults = check_layout(plan.design);
    const std::vector<Diagnostic> refused = refuse_what_is_not_shown_yet(plan.design);
    plan.diagnostics.insert(plan.diagnostics.end(), refused.begin(), refused.end());
    plan.diagnostics.insert(plan.diagnostics.end(), fitted.diagnostics.begin(),
                            fitted.diagnostics.end());
    plan.diagnostics.insert(plan.diagnostics.end(), faults.begin(), faults.end());
    put_in_order(plan.diagnostics);
    if (!plan.diagnostics.empty())
        return plan;
    plan.schedule = lay(plan.design);
    plan.schedule.fitted = std::move(fitted.fitted);
    plan.headroom = headroom(plan.design, plan.schedule);
    plan.findings = practice_findings(plan.design, plan.schedule);
    for (const Headroom& room : plan.headroom)
        plan.findings.push_back(room.verdict);
    put_worst_first(plan.findings);
    return plan;
}

} // namespace coilwright
