#include "geometry/checks/find_changes.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/report_pages.hpp"

namespace coilwright {

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
    const DisplayUnit unit = drafting.unit();
    const auto value_of = [&](const Finding& finding) {
        return finding.value ? shown_value(finding, *finding.value, unit) : std::string("-");
    };
    const auto limit_of_it = [&](const Finding& finding) {
        return finding.limit ? shown_limit(finding, unit) : std::string("-");
    };
    for (const Finding& finding : findings)
        table.rows.push_back({verdict_text(finding.verdict), finding.code, finding.subject,
                              value_of(finding), limit_of_it(finding)});
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
        flow.paragraph("Value: " + finding.formula +
                       (finding.value ? " = " + value_of(finding) : ", not known") +
                       (finding.limit ? "; against " + limit_of_it(finding) : "") +
                       ". Source: " + finding.source + ".");
        flow.space(1.5);
    }
    return flow.finish();
}

std::vector<Sheet> other_check_pages(const Drafting& drafting,
                                     const std::vector<Finding>& findings) {
    bool first = true;
    Flow flow(
        drafting,
        [&] {
            const std::string title =
                first ? "Layout, use and practice" : "Layout, use and practice, continued";
            first = false;
            return titled_page(drafting, title, "");
        },
        sizes::small);
    flow.paragraph("What else was found, worst first: how it is laid out, whether people can use "
                   "it, and what crews keep to. The message says how the value is measured.");
    for (const Finding& finding : findings) {
        flow.need(12);
        flow.item(verdict_text(finding.verdict) + " - " + finding.subject + ": " + finding.code,
                  Flow::Mark::dot, true);
        flow.paragraph(finding.message + (finding.remedy.empty() ? "" : " " + finding.remedy));
        std::string basis;
        if (finding.value)
            basis = "Value " + shown_value(finding, *finding.value, drafting.unit()) +
                    (finding.limit ? "; against " + shown_limit(finding, drafting.unit()) : "") +
                    ". ";
        if (!finding.source.empty())
            basis += "Source: " + finding.source + ".";
        if (!basis.empty())
            flow.paragraph(basis);
    }
    return flow.finish();
}

} // namespace coilwright
