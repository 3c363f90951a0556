#include "geometry/checks/check_building.hpp"

#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/trade_findings.hpp"
#include "geometry/checks/use_findings.hpp"

#include <iterator>

namespace coilwright {

namespace {

void append(std::vector<Finding>& all, std::vector<Finding> more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

} // namespace

std::vector<Finding> check_building(const BuildingPlan& plan) {
    std::vector<Finding> findings = use_findings(plan);
    append(findings, trade_findings(plan));
    const Design& design = plan.design;
    const BuildingForm& building = plan.schedule.building;
    const BuildingStatics statics = building_statics(plan);
    for (std::size_t i = 0; i < building.domes.size(); ++i) {
        const DomeForm& dome = building.domes[i];
        const DomeAnalysis& analysis = statics.domes[i];
        append(findings, dome_findings(design, dome, analysis));
        append(findings, ground_findings(design, dome, analysis));
        append(findings, buttress_findings(design, building, dome, analysis));
        append(findings, sideways_findings(design, dome, analysis));
        append(findings, stage_findings(design, dome, analysis));
    }
    for (std::size_t i = 0; i < building.tunnels.size(); ++i)
        append(findings, tunnel_findings(design, building.tunnels[i], statics.tunnels[i]));
    append(findings, opening_findings(plan));
    return findings;
}

std::vector<Finding> all_findings(const BuildingPlan& plan) {
    std::vector<Finding> all = plan.findings;
    append(all, check_building(plan));
    put_worst_first(all);
    return all;
}

} // namespace coilwright
