#include "geometry/base/quantity.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/formula_notes.hpp"
#include "geometry/report/report_pages.hpp"
#include "geometry/report/thrust_view.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

std::string strip_title(const StripStatics& strip) {
    return strip.beside.empty() ? "Clear of all openings" : "Beside '" + strip.beside + "'";
}

/// What stands under a section: its factor, the friction it needs, its thrust.
std::vector<std::string> strip_lines(const Drafting& drafting, const StripStatics& strip) {
    const auto on_a_radian = [&](const ThrustLine& line) {
        return force_text(line.joints.back().thrust(), drafting.unit()) + " on a radian";
    };
    std::vector<std::string> lines;
    lines.push_back("factor " + three_digits(strip.centred.safety()) + ", friction needed: " +
                    (strip.friction.friction < 100 ? three_digits(strip.friction.friction)
                                                   : std::string("none does")));
    if (strip.least.stands)
        lines.push_back("least thrust on the ground: " + on_a_radian(strip.least));
    if (strip.greatest.stands)
        lines.push_back("greatest: " + on_a_radian(strip.greatest));
    if (!strip.least.stands)
        lines.push_back("no line with the friction assumed, " +
                        three_digits(drafting.plan.design.joint.friction));
    if (!strip.centred.line.stands)
        lines.push_back("no line of thrust at all");
    return lines;
}

/// The strip clear of openings and the worst one, side by side.
void add_sections(Flow& flow, const Drafting& drafting, const DomeForm& dome,
                  const DomeStatics& statics) {
    std::vector<const StripStatics*> strips{&statics.strips[0]};
    if (statics.worst != 0)
        strips.push_back(&statics.strips[statics.worst]);
    const double wide = base_outside(dome), high = dome.top() - dome.bottom();
    const double each = flow.width() / 2 - 4, most = flow.room() - 92;
    const Scale scale = largest_scale(wide, high, each - 4, most, drafting.unit());
    const double drawn = scale.on_paper(high);
    flow.paragraph("Sections to scale, " + scale.text + ".");
    DrawnLines lines;
    flow.block(drawn + 30, [&](Sheet& sheet, const PaperBox& box) {
        for (std::size_t i = 0; i < strips.size(); ++i) {
            const double left = box.left + static_cast<double>(i) * (each + 8);
            const HalfFrame frame{{left + 2, box.bottom + 24 - scale.on_paper(dome.bottom())},
                                  scale.on_paper(1)};
            add_half_section(sheet, statics.courses, frame);
            const StripStatics& strip = *strips[i];
            const DrawnLines here =
                add_thrust_lines(sheet, frame, strip.centred.line, strip.least, strip.greatest);
            lines.centred |= here.centred;
            lines.least |= here.least;
            lines.greatest |= here.greatest;
            lines.leaves |= here.leaves;
            double y = box.bottom + 17;
            add_text(sheet, {left, y}, strip_title(strip), sizes::body, true);
            for (const std::string& text : strip_lines(drafting, strip)) {
                y -= 4.6;
                add_text(sheet, {left, y},
                         shortened(text, each, sizes::small, false, drafting.measure),
                         sizes::small);
            }
        }
    });
    flow.block(26, [&](Sheet& sheet, const PaperBox& box) {
        add_thrust_legend(sheet, {box.left, box.top}, lines);
    });
    add_formulas(flow, ReportTable::sections);
}

/// Forces in the surface against height: a plot of two curves.
void add_membrane(Flow& flow, const Drafting& drafting, const DomeAnalysis& analysis,
                  const DomeForm& dome) {
    const std::vector<CourseMembrane>& membrane = analysis.membrane;
    if (membrane.size() < 2)
        return;
    flow.heading("Membrane forces above the springline", 90);
    flow.paragraph(
        "What a thin shell of the same weight would carry in its surface: along the meridian "
        "(solid) and around the ring (dashed; left of the axis: tension, which bags do not "
        "take).");
    flow.block(72, [&](Sheet& sheet, const PaperBox& box) {
        double least = 0, most = 0;
        const double low = dome.course_bottom(membrane.front().course);
        const double high = dome.course_bottom(membrane.back().course + 1);
        for (const CourseMembrane& course : membrane) {
            least = std::min(least, course.forces.hoop);
            most = std::max({most, course.forces.meridional, course.forces.hoop});
        }
        const double left = box.left + 24, width = box.width() - 60, height = 54;
        const double span = std::max(most - least, 1e-9);
        const auto at = [&](double force, double z) {
            return Vec2(left + (force - least) / span * width,
                        box.bottom + 12 + (z - low) / (high - low) * height);
        };
        add_line(sheet, at(0, low), at(0, high), pens::seen);
        add_line(sheet, at(least, low), at(most, low), pens::seen);
        std::vector<Vec2> meridian, ring;
        for (const CourseMembrane& course : membrane) {
            meridian.push_back(at(course.forces.meridional, dome.course_bottom(course.course)));
            ring.push_back(at(course.forces.hoop, dome.course_middle(course.course)));
        }
        add_polyline(sheet, meridian, pens::cut);
        add_polyline(sheet, ring, Stroke{0.5, {0}, {3, 1.2}});
        for (const double force : {least, 0.0, most}) {
            add_line(sheet, at(force, low), at(force, low) - Vec2(0, 1.5), pens::seen);
            if (force != 0 || std::abs(least) > 0.12 * span)
                add_text(sheet, at(force, low) - Vec2(0, 5.5),
                         line_force_text(force, drafting.unit()), sizes::small, false,
                         Align::centre);
        }
        for (const double z : {low, high})
            add_text(sheet, at(least, z) - Vec2(2, 1), drafting.length(z), sizes::small, false,
                     Align::right);
    });
    add_formulas(flow, ReportTable::membrane);
}

double in_stress_unit(const Drafting& drafting, double pascals) {
    constexpr double psi = newtons_per_pound_force / (metres_per_inch * metres_per_inch);
    return pascals / (drafting.unit() == DisplayUnit::feet ? psi : 1e6);
}

void add_piers(Flow& flow, const Drafting& drafting, const DomeStatics& statics) {
    if (statics.piers.empty())
        return;
    const bool feet = drafting.unit() == DisplayUnit::feet;
    Table table;
    table.columns = {{{"course"}, Align::right, true},
                     {{"wall from"}, Align::left, false},
                     {{"to"}, Align::left, false},
                     {{"length"}, Align::right, false},
                     {{"pressure", feet ? "psi" : "MPa"}, Align::right, false},
                     {{"strength", feet ? "psi" : "MPa"}, Align::right, false}};
    for (const PierCheck& pier : statics.piers)
        table.rows.push_back({std::to_string(pier.course), pier.from, pier.to,
                              drafting.length(pier.length),
                              cell(in_stress_unit(drafting, pier.pressure), feet ? 1 : 3),
                              cell(in_stress_unit(drafting, pier.strength), feet ? 1 : 3)});
    flow.table("Walls between openings, each in the course that is pressed most", table,
               sizes::small, sizes::least);
    add_formulas(flow, ReportTable::piers);
}

void add_tables(Flow& flow, const Drafting& drafting, const DomeAnalysis& analysis) {
    const DomeStatics& statics = analysis.statics;
    const bool feet = drafting.unit() == DisplayUnit::feet;
    const auto force = [&](double newtons) {
        return cell(feet ? newtons / newtons_per_pound_force : newtons / 1000, feet ? 0 : 3);
    };
    const std::string unit = feet ? "lbf" : "kN", run_unit = unit + (feet ? "/ft" : "/m");
    const double run = feet ? metres_per_foot : 1;
    Table geometry;
    geometry.columns = {{{"course"}, Align::right, true},
                        {{"inside", "radius"}, Align::right, false},
                        {{"width"}, Align::right, false},
                        {{"flat", "under it"}, Align::right, false},
                        {{"weight", unit + "/rad"}, Align::right, false},
                        {{"centroid", "from pole"}, Align::right, false},
                        {{"open", "%"}, Align::right, false},
                        {{"meridian", run_unit}, Align::right, false},
                        {{"ring", run_unit}, Align::right, false}};
    const auto of_membrane = [&](int number, double MembraneForces::*which) -> std::string {
        for (const CourseMembrane& course : analysis.membrane)
            if (course.course == number)
                return force(course.forces.*which * run);
        return "-"; // under the springline
    };
    for (auto course = statics.courses.rbegin(); course != statics.courses.rend(); ++course)
        geometry.rows.push_back({std::to_string(course->number), drafting.length(course->inside),
                                 drafting.length(course->outside - course->inside),
                                 drafting.length(course->contact_width()), force(course->weight),
                                 drafting.length(course->mass_radius),
                                 cell(100 * course->open_share, 0),
                                 of_membrane(course->number, &MembraneForces::meridional),
                                 of_membrane(course->number, &MembraneForces::hoop)});
    flow.table("Courses, with the membrane's forces", geometry, sizes::small, sizes::least);
    add_formulas(flow, ReportTable::courses);
    const StripStatics& worst = statics.strips[statics.worst];
    const auto joints_table = [&](const std::string& title, const std::vector<JointCheck>& joints) {
        Table table;
        table.columns = {{{"joint", "under"}, Align::right, true},
                         {{"normal", run_unit}, Align::right, false},
                         {{"thrust", run_unit}, Align::right, false},
                         {{"reach", "%"}, Align::right, false},
                         {{"shear /", "normal"}, Align::right, false},
                         {{"pressure", feet ? "psi" : "MPa"}, Align::right, false},
                         {{"ring", unit}, Align::right, false}};
        for (auto joint = joints.rbegin(); joint != joints.rend(); ++joint)
            table.rows.push_back({std::to_string(joint->course), force(joint->normal * run),
                                  force(joint->thrust * run), cell(100 * joint->reach, 0),
                                  cell(joint->friction_needed, 3),
                                  cell(in_stress_unit(drafting, joint->pressure), feet ? 1 : 3),
                                  force(joint->hoop)});
        flow.table(title, table, sizes::small, sizes::least);
    };
    joints_table("Joints along the most centred line, " + (worst.beside.empty()
                                                               ? std::string("clear of openings")
                                                               : "beside '" + worst.beside + "'"),
                 worst.joints);
    add_formulas(flow, ReportTable::joints);
    const double friction = drafting.plan.design.joint.friction;
    const double needed = analysis.frictions[statics.worst];
    if (needed <= friction) {
        joints_table("Joints along the line that asks least strength, the same strip",
                     analysis.pressures[statics.worst].joints);
        flow.paragraph(
            "Columns as in the table before. Of all lines of thrust the one whose worst joint has "
            "the most strength to spare: e <= d/2 - f N/(2 x strength) in every joint, f as great "
            "as can be, by a linear program (limit analysis: Heyman, The Stone Skeleton, 1966, "
            "from memory).");
    } else
        flow.paragraph("No line of thrust stands " + strip_words(worst.beside) +
                       " at the friction of the joints, " + three_digits(friction) +
                       (needed < unlimited
                            ? ": the only one that " + three_digits(up_to_three_digits(needed)) +
                                  " allows runs along the edges of joints, and its pressures tell "
                                  "nothing."
                            : ", nor at any other: pressures are not known."));
    flow.space(2);
    add_piers(flow, drafting, statics);
}

} // namespace

std::vector<Sheet> dome_pages(const Drafting& drafting, const DomeForm& dome,
                              const DomeAnalysis& analysis) {
    bool first = true;
    Flow flow(
        drafting,
        [&] {
            const std::string title = "Dome '" + dome.id + "'" + (first ? "" : ", continued");
            first = false;
            return titled_page(drafting, title, "");
        },
        sizes::small);
    if (analysis.statics.strips.empty()) {
        flow.paragraph("A course finds nothing to lie on: there is no line of thrust to draw.");
        return flow.finish();
    }
    add_sections(flow, drafting, dome, analysis.statics);
    add_membrane(flow, drafting, analysis, dome);
    add_tables(flow, drafting, analysis);
    return flow.finish();
}

} // namespace coilwright
