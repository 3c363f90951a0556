#include "geometry/plan/plan_building.hpp"

#include "geometry/plan/check_layout.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "geometry/plan/practice.hpp"
#include "geometry/plan/short_pieces.hpp"

#include <algorithm>

namespace coilwright {

namespace {

/// What to look at first.
int rank(const Finding& finding) {
    switch (finding.verdict) {
    case Verdict::fails:
        return 0;
    case Verdict::advice:
        return 2;
    case Verdict::not_judged: // a ratio under its limit weighs more than any advice
        return finding.unit == FindingUnit::ratio && finding.value && finding.limit &&
                       *finding.value < *finding.limit
                   ? 1
                   : 3;
    case Verdict::holds:
        return 4;
    }
    return 5;
}

} // namespace

void put_worst_first(std::vector<Finding>& findings) {
    std::stable_sort(findings.begin(), findings.end(),
                     [](const Finding& a, const Finding& b) { return rank(a) < rank(b); });
}

BuildingPlan plan_building(Design design, std::vector<Diagnostic> diagnostics,
                           const DecideRegion& decide) {
    BuildingPlan plan;
    Fit fitted = fit(design);
    plan.design = std::move(fitted.design);
    plan.diagnostics = std::move(diagnostics);
    const std::vector<Diagnostic> faults = check_layout(plan.design);
    plan.diagnostics.insert(plan.diagnostics.end(), fitted.diagnostics.begin(),
                            fitted.diagnostics.end());
    plan.diagnostics.insert(plan.diagnostics.end(), faults.begin(), faults.end());
    limit(plan.diagnostics);
    if (!plan.diagnostics.empty())
        return plan;
    plan.schedule = lay(plan.design, decide);
    plan.schedule.fitted = std::move(fitted.fitted);
    plan.headroom = headroom(plan.design, plan.schedule);
    plan.findings = practice_findings(plan.design, plan.schedule);
    for (Finding& finding : short_piece_findings(plan.design, plan.schedule))
        plan.findings.push_back(std::move(finding));
    for (const Headroom& room : plan.headroom)
        plan.findings.push_back(room.verdict);
    plan.tunnel_headroom = tunnel_headroom(plan.design, plan.schedule);
    put_worst_first(plan.findings);
    return plan;
}

} // namespace coilwright
