#include "exporters/findings_table.hpp"

#include "exporters/text_table.hpp"

#include <algorithm>

namespace coilwright {
namespace {

std::string value_text(const std::optional<double>& value, FindingUnit kind, DisplayUnit unit) {
    return value ? finding_value(*value, kind, unit) : "-";
}

} // namespace

std::string finding_value(double value, FindingUnit kind, DisplayUnit unit) {
    switch (kind) {
    case FindingUnit::metre:
        return length_text(value, unit);
    case FindingUnit::square_metre:
        return area_text(value, unit);
    case FindingUnit::degree:
        return fixed_text(value, 1) + "°";
    case FindingUnit::count:
        return fixed_text(value, 0);
    case FindingUnit::none:
        break;
    }
    return fixed_text(value, 3);
}

std::string findings_table(const BuildingPlan& plan) {
    if (plan.findings.empty())
        return "No findings.\n";
    const DisplayUnit unit = plan.schedule.unit;
    std::vector<std::vector<std::string>> rows;
    for (const Finding& finding : plan.findings)
        rows.push_back({verdict_text(finding.verdict), finding.subject, finding.code,
                        value_text(finding.value, finding.unit, unit),
                        value_text(finding.limit, finding.unit, unit), finding.source,
                        finding.remedy});
    std::string text = text_table({{"verdict", CellAlign::left},
                                   {"subject", CellAlign::left},
                                   {"check", CellAlign::left},
                                   {"value"},
                                   {"limit"},
                                   {"source", CellAlign::left},
                                   {"remedy", CellAlign::left}},
                                  rows);
    text += "\n";
    for (const Verdict verdict :
         {Verdict::fails, Verdict::advice, Verdict::not_judged, Verdict::holds}) {
        const auto count =
            std::count_if(plan.findings.begin(), plan.findings.end(),
                          [&](const Finding& finding) { return finding.verdict == verdict; });
        text += verdict_text(verdict) + ": " + std::to_string(count) +
                (verdict == Verdict::holds ? "\n" : "; ");
    }
    return text;
}

} // namespace coilwright
