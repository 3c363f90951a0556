#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/plan_view.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/drawing/section_view.hpp"
#include "geometry/drawing/site_view.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

/// The course whose plan shows a dome's openings best: that with the most cuts, the lowest of them.
const Course* telling_course(const Schedule& schedule, const DomeForm& dome) {
    const Course* best = nullptr;
    std::size_t most = 0;
    for (const Course& course : schedule.courses) {
        const Ring* ring = ring_of_dome(course, dome.id);
        if (!ring || course.below_floor)
            continue;
        if (!best || ring->cuts.size() > most) {
            best = &course;
            most = ring->cuts.size();
        }
    }
    return best ? best : &schedule.courses.front();
}

void caption(Sheet& sheet, const Drafting& drafting, const PaperBox& box, const std::string& text,
             const std::string& scale) {
    const MeasureText& measure = drafting.measure;
    add_text(sheet, {box.left, box.top - 4.2},
             shortened(text, box.width(), sizes::body, true, measure), sizes::body, true);
    add_text(sheet, {box.left, box.top - 9},
             shortened(scale, box.width(), sizes::small, false, measure), sizes::small);
}

/// Plan on the left, section on the right; the section, which needs more, takes its width first.
void add_views(Sheet& sheet, const PaperBox& box, const Drafting& drafting, const DomeForm& dome) {
    const Schedule& schedule = drafting.schedule();
    constexpr double caption_height = 11, rim = 10, between = 4;
    const Vec2 size = section_size(dome);
    const double sides = section_left + section_right;
    const Scale scale = largest_scale(size.x(), size.y(), box.width() * 0.6 - sides,
                                      box.height() - caption_height - section_below - section_above,
                                      drafting.unit());
    const double section_width = std::max(scale.on_paper(size.x()) + sides, box.width() * 0.5);
    const PaperBox right{box.right - section_width, box.bottom, box.right, box.top};
    const PaperBox left{box.left, box.bottom, right.left - between, box.top};

    const std::string element = datum_element(drafting.plan, dome);
    caption(sheet, drafting, right,
            element.empty() ? "Section, north on the right" : "Section through '" + element + "'",
            scale.text);
    const PaperBox section_box{right.left, right.bottom, right.right, right.top - caption_height};
    Placer section_placer(section_box, drafting.measure);
    const double slack =
        (section_box.height() - section_below - section_above - scale.on_paper(size.y())) / 2;
    const SectionFrame section_frame{
        {section_box.left + section_left + (section_width - sides) / 2,
         section_box.bottom + section_below + slack - scale.on_paper(dome.bottom())},
        scale.on_paper(1)};
    add_section(sheet, section_placer, drafting.plan, dome, dome.datum, section_frame);

    const Course& course = *telling_course(schedule, dome);
    const CoursePart part = *part_in(schedule, course.number, dome.id);
    const GroundBox ground = plan_extent(drafting.plan, part);
    const Scale plan_scale =
        largest_scale(ground.size().x(), ground.size().y(), left.width() - 2 * rim,
                      left.height() - caption_height - 2 * rim, drafting.unit());
    caption(sheet, drafting, left,
            "Plan, course " + std::to_string(course.number) + " at " +
                rod_text(course.middle, drafting.unit()),
            plan_scale.text);
    const PaperBox plan_box{left.left, left.bottom, left.right, left.top - caption_height};
    Placer plan_placer(plan_box, drafting.measure);
    const double mm_per_metre = plan_scale.on_paper(1);
    const PlanFrame frame{plan_box.centre() - ground.centre() * mm_per_metre, mm_per_metre};
    const CoursePlan plan{drafting.plan, part,
                          nullptr,       false,
                          "datum",       drafting.length(part.rings.front()->inside_radius)};
    add_course_plan(sheet, plan_placer, plan, frame);
}

/// Bold text in a frame, or white on black.
void add_framed(Flow& flow, const std::string& text, bool inverted) {
    const double size = sizes::strong;
    const std::vector<std::string> lines =
        wrapped(text, flow.width() - 8, size, true, flow.measure());
    const double height = lines_height(lines.size(), size) + 5;
    flow.space(2);
    flow.block(height, [&](Sheet& sheet, const PaperBox& box) {
        if (inverted)
            add_fill(sheet, box, {0});
        else
            add_box(sheet, box, {1.2, {0}, {}});
        const std::size_t first = sheet.items.size();
        add_lines(sheet, {box.left + 4, box.top - 2.2}, lines, size, true);
        for (std::size_t i = first; inverted && i < sheet.items.size(); ++i)
            if (auto* item = std::get_if<TextItem>(&sheet.items[i]))
                item->ink = {1};
    });
    flow.space(3);
}

void add_caution(Flow& flow) {
    add_framed(flow,
               "CAUTION. " + words::caution() +
                   " An open ring, a form struck early or a bank of earth that gives way can kill.",
               false);
}

/// How many checks the design fails, and where they are told.
void add_failing(Flow& flow, const BookIndex& index, const std::vector<Finding>& findings) {
    const std::size_t count = failing_checks(findings).size();
    if (count == 0)
        return;
    add_framed(flow,
               (count == 1 ? "1 CHECK OF THIS DESIGN FAILS"
                           : std::to_string(count) + " CHECKS OF THIS DESIGN FAIL") +
                   std::string(": see sheet ") + std::to_string(index.chapters.front().first) +
                   ". Do not build from this book before they are mended or judged by a licensed "
                   "professional.",
               true);
}

/// The domes of a building side by side.
Table dome_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Dome"}, Align::left, true},
                     {{"Profile"}, Align::left, false},
                     {{"Inside", "across"}, Align::right, true},
                     {{"Spring-", "line"}, Align::right, false},
                     {{"Apex", "or top"}, Align::right, false},
                     {{"Courses"}, Align::right, false},
                     {{"of them", "below 0"}, Align::right, false},
                     {{"Tube,", "tamped"}, Align::right, false},
                     {{"Openings"}, Align::right, false}};
    for (const DomeForm& dome : drafting.schedule().building.domes)
        table.rows.push_back({dome.id, word(dome.profile.kind),
                              drafting.length(2 * dome.profile.half_span),
                              drafting.length(dome.springline),
                              drafting.length(dome.cap_courses > 0 ? dome.apex() : dome.top()),
                              std::to_string(dome.courses()), std::to_string(dome.foundation),
                              drafting.length(dome.width),
                              std::to_string(openings_of(drafting.schedule(), dome.id).size())});
    return table;
}

Table tunnel_table(const Drafting& drafting) {
    Table table;
    table.columns = {{{"Tunnel"}, Align::left, true},
                     {{"From"}, Align::left, false},
                     {{"To"}, Align::left, false},
                     {{"Inside", "width"}, Align::right, true},
                     {{"Spring-", "line"}, Align::right, false},
                     {{"Crown,", "inside"}, Align::right, false},
                     {{"Courses"}, Align::right, false},
                     {{"Tube,", "tamped"}, Align::right, false}};
    for (const TunnelForm& tunnel : drafting.schedule().building.tunnels)
        table.rows.push_back(
            {tunnel.id, tunnel.from,
             tunnel.to.empty() ? (tunnel.end_wall ? "end wall" : "open end") : tunnel.to,
             drafting.length(2 * tunnel.profile.half_span), drafting.length(tunnel.springline),
             drafting.length(tunnel.crown()),
             std::to_string(tunnel.side_courses + tunnel.crown_courses),
             drafting.length(tunnel.width)});
    return table;
}

/// How many sheets the book has, where its chapters and the sheets of each dome and tunnel start,
/// and in which order they come.
void add_index(Flow& flow, const Drafting& drafting, const BookIndex& index) {
    const bool several = several_parts(drafting.schedule());
    std::string text = "This book has " + std::to_string(index.sheets) + " sheets.";
    for (const BookIndex::Chapter& chapter : index.chapters)
        text += " " + chapter.name + ": sheet " + std::to_string(chapter.first) + ".";
    if (!index.courses.empty())
        text += " Course 1: sheet " + std::to_string(index.courses.front()) + ".";
    text += several
                ? " The sheets of a course come in the order in which its parts are laid: first "
                  "what others stop against. Work through them as they lie."
                : " One course after the other, from the trench up.";
    flow.paragraph(text);
    const std::vector<TubeOrder>& order = drafting.schedule().totals.order;
    std::string tubes;
    for (const TubeType& type : drafting.plan.design.tubes) {
        double cut = 0;
        for (const TubeOrder& line : order)
            cut += line.tube == type.id ? line.cut_length : 0;
        if (cut > 0)
            tubes += " " + supply_text(cut, drafting.unit()) + " of '" + type.id + "', lay-flat " +
                     drafting.length(type.lay_flat) + ".";
    }
    flow.paragraph("Tube to order, ends included, waste not included:" + tubes +
                   " By dome on sheet " + std::to_string(index.chapters.front().first) + ".");
    if (!several)
        return;
    Table table;
    table.columns = {{{"Sheets of"}, Align::left, true},
                     {{"Start at", "sheet"}, Align::right, true},
                     {{"How", "many"}, Align::right, false},
                     {{"Courses"}, Align::right, false}};
    for (const BookIndex::Part& part : index.parts)
        table.rows.push_back(
            {part.id, std::to_string(part.first), std::to_string(part.sheets),
             std::to_string(part.first_course) + "–" + std::to_string(part.last_course)});
    flow.table("", table, sizes::body, sizes::least);
    std::string courses = "Courses start at sheets";
    for (std::size_t i = 0; i < index.courses.size(); ++i)
        courses += (i > 0 ? ", " : " ") + std::to_string(i + 1) + ":\u00a0" +
                   std::to_string(index.courses[i]);
    flow.paragraph(courses + ".", sizes::small);
}

std::string unit_line(const Drafting& drafting) {
    if (drafting.unit() == DisplayUnit::feet)
        return "All lengths are in feet and inches, to the nearest 1/8 in. Bearings are in degrees "
               "clockwise from north, seen from above.";
    return "All lengths are in millimetres (mm). Bearings are in degrees clockwise from north, "
           "seen "
           "from above.";
}

} // namespace

std::vector<Sheet> cover_pages(const Drafting& drafting, const BookIndex& index,
                               const std::vector<Finding>& findings) {
    const Schedule& schedule = drafting.schedule();
    bool first = true;
    Flow flow(drafting, [&] {
        if (!first)
            return titled_page(drafting, "Crew book, continued", "");
        Page page = new_page(drafting, "Crew book");
        const double size =
            fitting_size(schedule.name, page.body.width(), 12, 7, true, drafting.measure);
        const auto lines =
            wrapped(schedule.name, page.body.width(), size, true, drafting.measure, 2);
        const double used =
            add_lines(page.sheet, {page.body.left, page.body.top}, lines, size, true);
        add_text(page.sheet, {page.body.left, page.body.top - used - sizes::heading},
                 "Crew book: one sheet for each course", sizes::heading);
        page.body.top -= used + sizes::heading * leading + 2;
        add_line(page.sheet, {page.body.left, page.body.top}, {page.body.right, page.body.top},
                 pens::heavy);
        page.body.top -= 2;
        first = false;
        return page;
    });
    const BuildingForm& building = schedule.building;
    const bool several = several_parts(schedule);
    const double least_views = several ? 76 : 105; // mm high
    if (several) { // the building as a whole first, then what it is made of
        flow.paragraph(unit_line(drafting));
        add_failing(flow, index, findings);
        add_caution(flow);
        flow.block(flow.room() - 1,
                   [&](Sheet& sheet, const PaperBox& box) { add_site(sheet, box, drafting); });
        flow.table("", dome_table(drafting), sizes::body, sizes::least);
        if (!building.tunnels.empty())
            flow.table("", tunnel_table(drafting), sizes::body, sizes::least);
        add_index(flow, drafting, index);
    } else {
        flow.paragraph(words::dome_in_a_sentence(drafting.plan, building.domes.front()));
    }
    for (const Fitted& fitted : schedule.fitted)
        flow.paragraph("Fitted: " + fitted.text, sizes::body, true);
    if (!several) {
        flow.paragraph(unit_line(drafting));
        add_index(flow, drafting, index);
        add_failing(flow, index, findings);
        add_caution(flow);
    }
    for (const DomeForm& dome : building.domes) {
        if (several)
            flow.heading("Dome '" + dome.id + "'", least_views);
        const double free = flow.room() - 1;
        // Two domes share a sheet; one takes what there is.
        flow.block(
            several || free < least_views ? least_views : free,
            [&](Sheet& sheet, const PaperBox& box) { add_views(sheet, box, drafting, dome); });
    }
    return flow.finish();
}

} // namespace coilwright
