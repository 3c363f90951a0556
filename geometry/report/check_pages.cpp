#include "geometry/checks/find_changes.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/report_pages.hpp"

namespace coilwright {

namespace {

std::string value_text(const Drafting& drafting, double value, FindingUnit unit,
                       const std::string& code) {
    switch (unit) {
    case FindingUnit::metre:
        return drafting.length(value);
    case FindingUnit::square_metre:
        return area_text(value, drafting.unit());
    case FindingUnit::pascal:
        return code == "lintel-bending" ? stress_text(value, drafting.unit())
                                        : pressure_text(value, drafting.unit());
    case FindingUnit::newton:
        return force_text(value, drafting.unit());
    case FindingUnit::newton_per_metre:
        return line_force_text(value, drafting.unit());
    default:
        return three_digits(value);
    }
}

} // namespace

std::vector<Sheet> check_pages(const Drafting& drafting, const std::vector<Finding>& findings,
                               const std::vector<SoughtChanges>& changes) {
    bool first = true;
    Flow flow(
        drafting,
        [&] {
            const std::string title = first ? "Checks, worst first" : "Checks, continued";
            first = false;
            return titled_page(drafting, title, "");
        },
        sizes::small);
    Table table;
    table.columns = {{{"verdict"}, Align::left, true},
                     {{"check"}, Align::left, false},
                     {{"of"}, Align::left, false},
                     {{"value"}, Align::right, true},
                     {{"against"}, Align::right, false}};
    const auto shown = [&](const Finding& finding, const std::optional<double>& value) {
        return value ? value_text(drafting, *value, finding.unit, finding.code) : std::string("-");
    };
    for (const Finding& finding : findings)
        table.rows.push_back({verdict_text(finding.verdict), finding.code, finding.subject,
                              shown(finding, finding.value), shown(finding, finding.limit)});
    flow.table("", table, sizes::small, sizes::least);
    flow.space(3);
    for (const Finding& finding : findings) {
        flow.need(24);
        flow.paragraph(
            finding.subject + ": " + finding.code + " - " + verdict_text(finding.verdict), 0, true);
        flow.paragraph(finding.message);
        if (!finding.remedy.empty())
            flow.paragraph("Remedy: " + finding.remedy);
        for (const std::string& line :
             change_lines(sought_for(changes, finding), finding, drafting.unit()))
            flow.paragraph(line);
        flow.paragraph("Value: " + finding.formula + " = " + shown(finding, finding.value) +
                       "; against " + shown(finding, finding.limit) +
                       ". Source: " + finding.source + ".");
        flow.space(1.5);
    }
    return flow.finish();
}

} // namespace coilwright
