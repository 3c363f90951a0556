#include "geometry/base/quantity.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/formula_notes.hpp"
#include "geometry/report/report_pages.hpp"
#include "geometry/report/thrust_view.hpp"

namespace coilwright {

namespace {

void add_section(Flow& flow, const Drafting& drafting, const TunnelForm& tunnel,
                 const TunnelAnalysis& analysis) {
    const double wide = outer_half_width(tunnel, tunnel.course_middle(1));
    const double high = tunnel.top() - tunnel.bottom();
    const Scale scale =
        largest_scale(wide, high, flow.width() * 0.5, flow.room() - 100, drafting.unit());
    flow.paragraph("Half of its section to scale, " + scale.text + ".");
    DrawnLines drawn;
    flow.block(scale.on_paper(high) + 10, [&](Sheet& sheet, const PaperBox& box) {
        const HalfFrame frame{{box.left + 2, box.bottom + 4 - scale.on_paper(tunnel.bottom())},
                              scale.on_paper(1)};
        add_half_section(sheet, analysis.courses, frame);
        drawn = add_thrust_lines(sheet, frame, analysis.centred.line, analysis.least,
                                 analysis.greatest);
    });
    flow.block(26, [&](Sheet& sheet, const PaperBox& box) {
        add_thrust_legend(sheet, {box.left, box.top}, drawn);
    });
    const auto thrust = [&](const ThrustLine& line) {
        return line_force_text(line.joints.back().thrust(), drafting.unit());
    };
    flow.paragraph("Factor " + three_digits(analysis.centred.safety()) +
                   (analysis.friction.line.stands
                        ? ", friction needed " + three_digits(analysis.friction.friction)
                        : std::string()) +
                   (analysis.least.stands && analysis.greatest.stands
                        ? "; thrust on the ground from " + thrust(analysis.least) + " to " +
                              thrust(analysis.greatest)
                        : std::string("; no line of thrust keeps within it")) +
                   ". No rings: until its crown is laid the form carries what leans.");
    add_formulas(flow, ReportTable::tunnel_sections);
}

void add_courses(Flow& flow, const Drafting& drafting, const TunnelAnalysis& analysis) {
    const bool feet = drafting.unit() == DisplayUnit::feet;
    Table table;
    table.columns = {{{"course"}, Align::right, true},
                     {{"inside", "from axis"}, Align::right, false},
                     {{"width"}, Align::right, false},
                     {{"flat", "under it"}, Align::right, false},
                     {{"weight", feet ? "plf" : "kN/m"}, Align::right, false},
                     {{"centroid", "from axis"}, Align::right, false}};
    constexpr double plf = newtons_per_pound_force / metres_per_foot;
    for (auto course = analysis.courses.rbegin(); course != analysis.courses.rend(); ++course)
        table.rows.push_back({std::to_string(course->number), drafting.length(course->inside),
                              drafting.length(course->outside - course->inside),
                              drafting.length(course->contact_width()),
                              cell(course->weight / (feet ? plf : 1000), feet ? 0 : 3),
                              drafting.length(course->mass_radius)});
    flow.table("Courses of one side", table, sizes::small, sizes::least);
    add_formulas(flow, ReportTable::tunnel_courses);
}

} // namespace

std::vector<Sheet> tunnel_pages(const Drafting& drafting, const TunnelForm& tunnel,
                                const TunnelAnalysis& analysis) {
    bool first = true;
    Flow flow(
        drafting,
        [&] {
            const std::string title = "Tunnel '" + tunnel.id + "'" + (first ? "" : ", continued");
            first = false;
            return titled_page(drafting, title, "");
        },
        sizes::small);
    if (!analysis.laid) {
        flow.paragraph("A course finds nothing to lie on: there is no line of thrust to draw.");
        return flow.finish();
    }
    add_section(flow, drafting, tunnel, analysis);
    add_courses(flow, drafting, analysis);
    return flow.finish();
}

} // namespace coilwright
