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

namespace {

std::vector<Finding> check_building(const BuildingPlan& plan, const BuildingStatics& statics) {
    std::vector<Finding> findings = use_findings(plan);
    append(findings, trade_findings(plan));
    const Design& design = plan.design;
    const BuildingForm& building = plan.schedule.building;
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

} // namespace

std::vector<Finding> check_building(const BuildingPlan& plan) {
    return check_building(plan, building_statics(plan));
}

CheckedBuilding checked_building(const BuildingPlan& plan) {
    CheckedBuilding checked;
    checked.statics = building_statics(plan);
    checked.findings = plan.findings;
    append(checked.findings, check_building(plan, checked.statics));
    put_worst_first(checked.findings);
    return checked;
}

std::vector<Finding> all_findings(const BuildingPlan& plan) {
    return checked_building(plan).findings;
}

} // namespace coilwright
