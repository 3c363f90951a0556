#include "geometry/base/quantity.hpp"
#include "geometry/checks/statics_finding.hpp"
#include "geometry/report/report_pages.hpp"
#include "geometry/report/thrust_view.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

namespace {

std::string strip_title(const StripStatics& strip) {
    return strip.beside.empty() ? "Clear of all openings" : "Beside '" + strip.beside + "'";
}

std::string on_a_radian(const Drafting& drafting, const ThrustLine& line) {
    return line.stands ? force_text(line.joints.back().thrust(), drafting.unit()) + " on a radian"
                       : "none with the friction assumed";
}

/// The strip clear of openings and the worst one, side by side.
void add_sections(Flow& flow, const Drafting& drafting, const DomeForm& dome,
                  const DomeStatics& statics) {
    std::vector<const StripStatics*> strips{&statics.strips[0]};
    if (statics.worst != 0)
        strips.push_back(&statics.strips[statics.worst]);
    const double wide = base_outside(dome), high = dome.top() - dome.bottom();
    const double each = flow.width() / 2 - 4, most = flow.room() - 52;
    const Scale scale = largest_scale(wide, high, each - 4, most, drafting.unit());
    const double drawn = scale.on_paper(high);
    flow.paragraph(
        "Sections to scale, " + scale.text +
        ". Heavy: the part of each joint that carries. A small circle marks where a line "
        "leaves it.");
    flow.block(drawn + 30, [&](Sheet& sheet, const PaperBox& box) {
        for (std::size_t i = 0; i < strips.size(); ++i) {
            const double left = box.left + static_cast<double>(i) * (each + 8);
            const HalfFrame frame{{left + 2, box.bottom + 24 - scale.on_paper(dome.bottom())},
                                  scale.on_paper(1)};
            add_half_section(sheet, statics.courses, frame);
            const StripStatics& strip = *strips[i];
            for (const auto& [line, stroke] : {std::pair{&strip.greatest, thrust_pens::greatest},
                                               {&strip.least, thrust_pens::least},
                                               {&strip.centred.line, thrust_pens::centred}})
                if (line->stands)
                    add_thrust_line(sheet, *line, frame, stroke);
            double y = box.bottom + 17;
            add_text(sheet, {left, y}, strip_title(strip), sizes::body, true);
            for (const std::string& text :
                 {"factor " + three_digits(strip.centred.safety()) + ", friction needed: " +
                      (strip.friction.friction < 100 ? three_digits(strip.friction.friction)
                                                     : std::string("none does")),
                  "least thrust on the ground: " + on_a_radian(drafting, strip.least),
                  "greatest: " + on_a_radian(drafting, strip.greatest)}) {
                y -= 4.6;
                add_text(sheet, {left, y},
                         shortened(text, each, sizes::small, false, drafting.measure),
                         sizes::small);
            }
        }
    });
    flow.block(16, [&](Sheet& sheet, const PaperBox& box) {
        add_thrust_legend(sheet, {box.left, box.top});
    });
}

/// Forces in the surface against height: a plot of two curves.
void add_membrane(Flow& flow, const Drafting& drafting, const DomeAnalysis& analysis,
                  const DomeForm& dome) {
    const std::vector<CourseMembrane>& membrane = analysis.membrane;
    if (membrane.size() < 2)
        return;
    flow.heading("Membrane forces above the springline", 90);
    flow.paragraph(
        "What a thin shell of the same weight would carry in its surface: meridian V "
        "sqrt(1 + x'^2)/r (solid), ring q r |x'| + V x''/sqrt(1 + x'^2) (dashed; left of "
        "the axis: tension, which bags do not take).");
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
}

std::string cell(double value, int decimals) {
    return std::isfinite(value) ? fixed_text(value, decimals) : "-";
}

void add_tables(Flow& flow, const Drafting& drafting, const DomeAnalysis& analysis) {
    const DomeStatics& statics = analysis.statics;
    const bool feet = drafting.unit() == DisplayUnit::feet;
    const auto force = [&](double newtons) {
        return cell(feet ? newtons / newtons_per_pound_force : newtons / 1000, feet ? 0 : 3);
    };
    constexpr double psi = newtons_per_pound_force / (metres_per_inch * metres_per_inch);
    const std::string unit = feet ? "lbf" : "kN";
    Table geometry;
    geometry.columns = {{{"course"}, Align::right, true},
                        {{"inside", "radius"}, Align::right, false},
                        {{"width"}, Align::right, false},
                        {{"flat", "under it"}, Align::right, false},
                        {{"weight", unit + "/rad"}, Align::right, false},
                        {{"centroid", "from pole"}, Align::right, false},
                        {{"open", "%"}, Align::right, false}};
    for (auto course = statics.courses.rbegin(); course != statics.courses.rend(); ++course)
        geometry.rows.push_back({std::to_string(course->number), drafting.length(course->inside),
                                 drafting.length(course->outside - course->inside),
                                 drafting.length(course->contact_width()), force(course->weight),
                                 drafting.length(course->mass_radius),
                                 cell(100 * course->open_share, 0)});
    flow.table("Courses", geometry, sizes::small, sizes::least);
    const StripStatics& worst = statics.strips[statics.worst];
    const auto joints_table = [&](const std::string& title, const std::vector<JointCheck>& joints) {
        Table table;
        table.columns = {{{"joint", "under"}, Align::right, true},
                         {{"normal", unit + (feet ? "/ft" : "/m")}, Align::right, false},
                         {{"thrust", unit + (feet ? "/ft" : "/m")}, Align::right, false},
                         {{"reach", "%"}, Align::right, false},
                         {{"shear /", "normal"}, Align::right, false},
                         {{"pressure", feet ? "psi" : "MPa"}, Align::right, false},
                         {{"ring", unit}, Align::right, false}};
        const double run = feet ? metres_per_foot : 1;
        for (auto joint = joints.rbegin(); joint != joints.rend(); ++joint)
            table.rows.push_back({std::to_string(joint->course), force(joint->normal * run),
                                  force(joint->thrust * run), cell(100 * joint->reach, 0),
                                  cell(joint->friction_needed, 3),
                                  cell(joint->pressure / (feet ? psi : 1e6), feet ? 1 : 3),
                                  force(joint->hoop)});
        flow.table(title, table, sizes::small, sizes::least);
    };
    joints_table("Joints along the most centred line, " + (worst.beside.empty()
                                                               ? std::string("clear of openings")
                                                               : "beside '" + worst.beside + "'"),
                 worst.joints);
    joints_table("Joints along the line that asks least strength, the same strip",
                 analysis.pressures[statics.worst].joints);
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

std::vector<Sheet> tunnel_pages(const Drafting& drafting, const TunnelForm& tunnel,
                                const TunnelAnalysis& analysis) {
    Flow flow(
        drafting, [&] { return titled_page(drafting, "Tunnel '" + tunnel.id + "'", ""); },
        sizes::small);
    if (!analysis.laid) {
        flow.paragraph("A course finds nothing to lie on: there is no line of thrust to draw.");
        return flow.finish();
    }
    const double wide = outer_half_width(tunnel, tunnel.course_middle(1));
    const double high = tunnel.top() - tunnel.bottom();
    const Scale scale =
        largest_scale(wide, high, flow.width() * 0.5, flow.room() - 60, drafting.unit());
    flow.paragraph(
        "Half of its section to scale, " + scale.text +
        ". Heavy: the part of each joint that carries. A small circle marks where a line "
        "leaves it.");
    flow.block(scale.on_paper(high) + 10, [&](Sheet& sheet, const PaperBox& box) {
        const HalfFrame frame{{box.left + 2, box.bottom + 4 - scale.on_paper(tunnel.bottom())},
                              scale.on_paper(1)};
        add_half_section(sheet, analysis.courses, frame);
        for (const auto& [line, stroke] : {std::pair{&analysis.greatest, thrust_pens::greatest},
                                           {&analysis.least, thrust_pens::least},
                                           {&analysis.centred.line, thrust_pens::centred}})
            if (line->stands)
                add_thrust_line(sheet, *line, frame, stroke);
    });
    flow.block(16, [&](Sheet& sheet, const PaperBox& box) {
        add_thrust_legend(sheet, {box.left, box.top});
    });
    const auto thrust = [&](const ThrustLine& line) {
        return line.stands ? line_force_text(line.joints.back().thrust(), drafting.unit())
                           : std::string("none");
    };
    flow.paragraph("Factor " + three_digits(analysis.centred.safety()) + ", friction needed " +
                   three_digits(analysis.friction.friction) + "; thrust on the ground from " +
                   thrust(analysis.least) + " to " + thrust(analysis.greatest) +
                   ". No rings: until its crown is laid the form carries what leans.");
    return flow.finish();
}

} // namespace coilwright
