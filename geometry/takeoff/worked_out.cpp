#include "geometry/takeoff/worked_out.hpp"

namespace coilwright {

WorkedOut work_everything_out(const BuildingPlan& plan, const Works& works,
                              const DecideRegion& decide) {
    WorkedOut out;
    out.works = works;
    out.take = take_off(plan, out.works, decide);
    if (!out.take.diagnostics.empty())
        return out;
    out.days = plan_days(plan, out.take, out.works);
    add_labour(out.take, out.days);
    out.costs = work_out_costs(out.take, out.works);
    const std::vector<Diagnostic> tubes = faults_of_tube_prices(plan.design, works);
    out.costs.diagnostics.insert(out.costs.diagnostics.end(), tubes.begin(), tubes.end());
    return out;
}

} // namespace coilwright
