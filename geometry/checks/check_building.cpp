#include "geometry/checks/check_building.hpp"

#include "geometry/checks/dome_findings.hpp"

#include <iterator>

namespace coilwright {

namespace {

void append(std::vector<Finding>& all, std::vector<Finding> more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

} // namespace

std::vector<Finding> check_building(const BuildingPlan& plan) {
    std::vector<Finding> findings;
    for (const DomeForm& dome : plan.schedule.building.domes)
        append(findings, dome_findings(plan.design, dome,
                                       dome_statics(plan.design, plan.schedule.building, dome)));
    return findings;
}

std::vector<Finding> all_findings(const BuildingPlan& plan) {
    std::vector<Finding> all = plan.findings;
    append(all, check_building(plan));
    put_worst_first(all);
    return all;
}

} // namespace coilwright
