#include "geometry/report/engineer_report.hpp"

#include "geometry/report/report_pages.hpp"

#include <algorithm>
#include <iterator>

namespace coilwright {

std::vector<Sheet> engineer_report(const BuildingPlan& plan, const CheckedBuilding& checked,
                                   const PaperSize& paper, const MeasureText& measure) {
    const Drafting drafting{plan, paper, measure};
    std::vector<Finding> told;
    std::vector<Finding> others;
    std::partition_copy(checked.findings.begin(), checked.findings.end(), std::back_inserter(told),
                        std::back_inserter(others),
                        [](const Finding& finding) { return !finding.formula.empty(); });
    const BuildingStatics& statics = checked.statics;
    const BuildingForm& building = plan.schedule.building;
    std::vector<Sheet> sheets = basis_pages(drafting, told);
    const auto append = [&](std::vector<Sheet> more) {
        std::move(more.begin(), more.end(), std::back_inserter(sheets));
    };
    append(material_pages(drafting));
    append(check_pages(drafting, told, checked.changes));
    for (std::size_t i = 0; i < building.domes.size(); ++i)
        append(dome_pages(drafting, building.domes[i], statics.domes[i]));
    for (std::size_t i = 0; i < building.tunnels.size(); ++i)
        append(tunnel_pages(drafting, building.tunnels[i], statics.tunnels[i]));
    append(lintel_pages(drafting));
    append(other_check_pages(drafting, others));
    number_sheets(sheets);
    return sheets;
}

} // namespace coilwright
