#include "geometry/checks/check_building.hpp"

#include "geometry/checks/dome_findings.hpp"
#include "geometry/checks/element_findings.hpp"
#include "geometry/checks/snow_findings.hpp"
#include "geometry/checks/trade_findings.hpp"
#include "geometry/checks/use_findings.hpp"
#include "geometry/threads/side_by_side.hpp"

#include <iterator>

namespace coilwright {

namespace {

void append(std::vector<Finding>& all, std::vector<Finding> more) {
    all.insert(all.end(), std::make_move_iterator(more.begin()),
               std::make_move_iterator(more.end()));
}

} // namespace

namespace {

std::vector<Finding> findings_of_dome(const BuildingPlan& plan, const DomeForm& dome,
                                      const DomeAnalysis& analysis) {
    const Design& design = plan.design;
    std::vector<Finding> findings = dome_findings(design, dome, analysis);
    append(findings, ground_findings(design, dome, analysis));
    append(findings, buttress_findings(design, plan.schedule.building, dome, analysis));
    append(findings, sideways_findings(design, dome, analysis));
    append(findings, stage_findings(design, dome, analysis));
    return findings;
}

} // namespace

std::vector<Finding> dome_checks(const BuildingPlan& plan, const DomeForm& dome) {
    return worse_of_snow(plan.design, [&](const DomeLoads& loads) {
        return findings_of_dome(
            plan, dome,
            analyse_dome(plan.design, plan.schedule.building, dome, parts_of_findings(), loads));
    });
}

std::vector<Finding> tunnel_checks(const BuildingPlan& plan, const TunnelForm& tunnel) {
    return worse_of_snow(plan.design, [&](const DomeLoads& loads) {
        return tunnel_findings(plan.design, tunnel, analyse_tunnel(plan.design, tunnel, loads));
    });
}

std::vector<Finding> check_building(const BuildingPlan& plan, const DomeChecks& of_dome,
                                    const TunnelChecks& of_tunnel) {
    std::vector<Finding> findings = use_findings(plan);
    append(findings, trade_findings(plan));
    const BuildingForm& building = plan.schedule.building;
    for (const DomeForm& dome : building.domes)
        append(findings, of_dome(dome));
    for (const TunnelForm& tunnel : building.tunnels)
        append(findings, of_tunnel(tunnel));
    append(findings, opening_findings(plan));
    append(findings, open_plan_findings(plan));
    return findings;
}

// Domes and tunnels share nothing: their statics are worked out side by side, and told in order.
std::vector<Finding> check_building(const BuildingPlan& plan) {
    const BuildingForm& building = plan.schedule.building;
    const std::size_t domes = building.domes.size();
    std::vector<std::vector<Finding>> found(domes + building.tunnels.size());
    side_by_side(found.size(), [&](std::size_t i) {
        found[i] = i < domes ? dome_checks(plan, building.domes[i])
                             : tunnel_checks(plan, building.tunnels[i - domes]);
    });
    std::size_t next = 0; // they are asked for in their order
    const auto in_order = [&](const auto&) { return std::move(found[next++]); };
    return check_building(plan, in_order, in_order);
}

CheckedBuilding checked_building(const BuildingPlan& plan) {
    CheckedBuilding checked;
    checked.statics = building_statics(plan);
    checked.findings = plan.findings;
    const BuildingForm& building = plan.schedule.building;
    std::size_t dome_place = 0, tunnel_place = 0; // they are asked for in their order
    append(checked.findings,
           check_building(
               plan,
               [&](const DomeForm& dome) {
                   const DomeAnalysis& known = checked.statics.domes[dome_place++];
                   return worse_of_snow(plan.design, [&](const DomeLoads& loads) {
                       return findings_of_dome(plan, dome,
                                               loads.snow
                                                   ? analyse_dome(plan.design, building, dome,
                                                                  parts_of_findings(), loads)
                                                   : known);
                   });
               },
               [&](const TunnelForm& tunnel) {
                   const TunnelAnalysis& known = checked.statics.tunnels[tunnel_place++];
                   return worse_of_snow(plan.design, [&](const DomeLoads& loads) {
                       return tunnel_findings(
                           plan.design, tunnel,
                           loads.snow ? analyse_tunnel(plan.design, tunnel, loads) : known);
                   });
               }));
    put_worst_first(checked.findings);
    return checked;
}

std::string checks_caution() {
    return "These checks are not engineering: follow the local code and have the design reviewed "
           "by "
           "a licensed professional.";
}

std::vector<Finding> all_findings(const BuildingPlan& plan) {
    // Not by way of checked_building(): the lines and membranes of the report take as long again.
    std::vector<Finding> findings = plan.findings;
    append(findings, check_building(plan));
    put_worst_first(findings);
    return findings;
}

} // namespace coilwright
