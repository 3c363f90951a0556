#include "geometry/drawing/course_tables.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/plan_view.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>
#include <optional>

namespace coilwright {
namespace {

constexpr double head_height = 32; // mm, of the band with the course's number and setting
constexpr double sign_height = 19; // of the lines to fill in at the end

/// How generously a sheet is set.
struct Style {
    double text;      // mm
    double plan_most; // mm, height of the box that holds the plan
    double plan_rim;  // mm around the ring for names and letters
    bool cut_heading; // over the table of cuts
};
constexpr Style styles[] = {{4.4, 116, 9, true}, {4.4, 104, 9, true},   {4.0, 106, 9, true},
                            {4.0, 98, 9, false}, {4.0, 88, 8.5, false}, {3.7, 98, 8.5, false},
                            {3.7, 86, 8, false}, {3.4, 92, 8, false},   {3.4, 78, 8, false}};
constexpr double names_room = 5; // mm more than the rim at the left and right, for names

std::string dome_name(const Drafting& drafting, const Ring& ring) {
    return drafting.schedule().building.domes.size() > 1 ? " of '" + ring.dome + "'" : "";
}

std::string sheet_title(const Drafting& drafting, const Course& course, const Ring& ring) {
    std::string title = "Course " + std::to_string(course.number) + dome_name(drafting, ring);
    if (ring.kind == RingKind::cap)
        title += ", cap";
    if (ring.curb)
        title += ", curb";
    return title;
}

/// The band at the head: the course's number and its setting, the largest type on the sheet.
void add_head(Sheet& sheet, const PaperBox& box, const Drafting& drafting, const Course& course,
              const Ring& ring, const DomeForm& dome) {
    const MeasureText& measure = drafting.measure;
    constexpr double label = 3.8, number_size = 26;
    const std::string number = std::to_string(course.number);
    const double number_width = measure(number, number_size, true).width;
    const double divide = box.left + std::max(38.0, number_width + 9);
    add_box(sheet, box, pens::heavy);
    add_line(sheet, {divide, box.bottom}, {divide, box.top}, pens::heavy);
    add_text(sheet, {box.left + 3, box.top - 5}, "COURSE of " + std::to_string(dome.courses()),
             label, true);
    add_text(sheet, {(box.left + divide) / 2, box.bottom + 4}, number, number_size, true,
             Align::centre);

    const std::vector<CompassReading> readings = compass_readings(ring, dome, drafting.plan.design);
    const double left = divide + 4, room = box.right - 3 - left;
    std::string what =
        ring.kind == RingKind::cap ? "SOLID DISC, across" : "COMPASS, " + readings.front().from;
    if (ring.curb)
        what = "CURB, plumb. " + what;
    if (drafting.schedule().building.domes.size() > 1)
        what = "DOME '" + ring.dome + "'. " + what;
    const std::string setting = drafting.length(
        ring.kind == RingKind::cap ? 2 * ring.outside_radius : readings.front().metres);
    std::string under = ring.kind == RingKind::cap
                            ? "No compass: short bags side by side, centred on the pole's axis"
                            : "";
    for (std::size_t i = 1; i < readings.size(); ++i)
        under +=
            (i > 1 ? " · " : "") + readings[i].from + " " + drafting.length(readings[i].metres);
    const double what_size = fitting_size(what, room, label, sizes::least, true, measure);
    add_text(sheet, {left, box.top - 5}, shortened(what, room, what_size, true, measure), what_size,
             true);
    const double size = fitting_size(setting, room, under.empty() ? 24 : 18, 10, true, measure);
    const double middle = under.empty() ? box.bottom + 12.5 : box.bottom + 17.2;
    add_text(sheet, {left - 0.04 * size, middle - 0.365 * size}, setting, size, true);
    if (!under.empty()) {
        const double under_size =
            fitting_size(under, room, sizes::strong, sizes::least, true, measure);
        add_text(sheet, {left, box.bottom + 2.8}, shortened(under, room, under_size, true, measure),
                 under_size, true);
    }
}

bool belongs_to(const Drafting& drafting, const SetNote& note, const std::string& dome) {
    for (const DomeForm& other : drafting.schedule().building.domes)
        if (other.id == note.element)
            return note.element == dome;
    for (const OpeningPlan& opening : drafting.schedule().openings)
        if (opening.form.id == note.element)
            return opening.form.in == dome;
    return true; // of no one dome: on the sheet of each
}

void add_notes(Flow& flow, const Drafting& drafting, const std::string& heading,
               const std::vector<SetNote>& notes, const std::string& dome) {
    bool headed = false;
    for (const SetNote& note : notes) {
        if (!belongs_to(drafting, note, dome))
            continue;
        if (!headed && !heading.empty())
            flow.heading(heading);
        headed = true;
        const bool warning = note.text.find("DO NOT") != std::string::npos ||
                             note.text.find("FORM CARRIES") != std::string::npos;
        flow.item(note.text, Flow::Mark::tick, warning);
    }
}

const Course* course_numbered(const Schedule& schedule, int number) {
    for (const Course& course : schedule.courses)
        if (course.number == number)
            return &course;
    return nullptr;
}

/// What to do when the course is tamped: level, wire, what the design sets, what the next one
/// needs.
void add_after(Flow& flow, const Drafting& drafting, const Course& course, const Ring& ring) {
    std::string always = "Top checked against the rod at four places.";
    const Course* next = course_numbered(drafting.schedule(), course.number + 1);
    if (course.wire_length > 0 && next && ring_of_dome(*next, ring.dome))
        always += " Wire laid.";
    flow.heading("When it is tamped");
    flow.item(always, Flow::Mark::tick);
    add_notes(flow, drafting, "", course.after, ring.dome);
    std::string needs;
    if (next)
        for (const SetNote& note : next->before)
            if (belongs_to(drafting, note, ring.dome))
                needs += (needs.empty() ? "" : ", ") + note.what + " of '" + note.element + "'";
    if (!needs.empty())
        flow.item("Have ready for course " + std::to_string(next->number) + ": " + needs + ".",
                  Flow::Mark::tick);
}

/// The box of the plan: at the largest scale for which there is room, and no larger than that scale
/// needs.
struct PlanBox {
    Scale scale;
    double width = 0, height = 0; // mm
};

PlanBox plan_box(const Drafting& drafting, const Ring& ring, const Style& style) {
    constexpr double least_height = 70, least_width = 80; // mm
    const double across = 2 * ring.outside_radius, room = style.plan_most - 2 * style.plan_rim;
    PlanBox plan{largest_scale(across, across, room, room, drafting.unit()), 0, 0};
    plan.height = std::max(least_height, plan.scale.on_paper(across) + 2 * style.plan_rim);
    plan.width =
        std::max(least_width, plan.scale.on_paper(across) + 2 * (style.plan_rim + names_room));
    return plan;
}

/// Plan on the left; figures and tubes to cut on the right.
void add_plan_and_figures(Sheet& sheet, const PaperBox& box, const Drafting& drafting,
                          const Course& course, const Ring& ring, const Ring* below,
                          const DomeForm& dome, const Table* tubes, const Style& style,
                          const PlanBox& plan) {
    const MeasureText& measure = drafting.measure;
    const PaperBox plan_area{box.left, box.bottom, box.left + plan.width, box.top};
    add_box(sheet, plan_area, pens::fine);
    Placer placer(grown(plan_area, -1), measure);
    const PlanFrame frame{plan_area.centre(), plan.scale.on_paper(1)};
    const std::vector<CompassReading> readings = compass_readings(ring, dome, drafting.plan.design);
    const bool axis_first = !readings.empty() && readings.front().metres == ring.inside_radius;
    const CoursePlan view{drafting.schedule(),
                          dome,
                          course,
                          ring,
                          below,
                          true,
                          "datum",
                          axis_first ? drafting.length(ring.inside_radius) : ""};
    add_course_plan(sheet, placer, view, frame);

    const double left = plan_area.right + 5, width = box.right - left;
    double y = add_facts(sheet, {left, box.top}, width,
                         course_facts(drafting, course, ring, below, dome), style.text, measure);
    if (tubes) {
        const TableLayout layout = lay_out(*tubes, width, style.text, sizes::small, true, measure);
        add_table(sheet, *tubes, layout, {left, y - 3}, 0, tubes->rows.size(), measure);
    }
}

/// The rules as lines: two columns, or one run of text where that is shorter.
struct HoldBox {
    std::vector<std::vector<std::string>> columns; // of lines; one column: a run of text
    double height = 0;
};

HoldBox hold_box(const Drafting& drafting, double width, const std::vector<std::string>& rules,
                 double size) {
    HoldBox two{{{}, {}}, 0}, one;
    std::string run;
    for (std::size_t i = 0; i < rules.size(); ++i) {
        run += (i > 0 ? " " : "") + rules[i];
        for (const std::string& line :
             wrapped(rules[i], width / 2 - 7, size, true, drafting.measure))
            two.columns[i % 2].push_back(line);
    }
    one.columns = {wrapped(run, width - 6, size, true, drafting.measure)};
    const auto height = [&](const HoldBox& box) {
        std::size_t lines = 0;
        for (const auto& column : box.columns)
            lines = std::max(lines, column.size());
        return lines_height(lines, size) + 2.5;
    };
    one.height = height(one);
    two.height = height(two);
    return one.height < two.height ? one : two;
}

void add_hold_box(Sheet& sheet, const PaperBox& box, const HoldBox& hold, double size) {
    add_box(sheet, box, pens::heavy);
    for (std::size_t i = 0; i < hold.columns.size(); ++i)
        add_lines(sheet, {box.left + 3 + static_cast<double>(i) * box.width() / 2, box.top - 1},
                  hold.columns[i], size, true);
}

void add_sign_lines(Sheet& sheet, const PaperBox& box, const Drafting& drafting) {
    const auto blank = [&](double x, double y, double width, const std::string& label) {
        add_text(sheet, {x, y}, label, sizes::small, true);
        const double used = drafting.measure(label, sizes::small, true).width + 1.5;
        add_line(sheet, {x + used, y - 0.6}, {x + width, y - 0.6}, pens::seen);
    };
    const double half = box.width() / 2, third = box.width() / 3;
    const double first = box.top - 7.5, second = box.top - 17;
    blank(box.left, first, half - 4, "Height reached");
    blank(box.left + half, first, half, "Compass set to");
    blank(box.left, second, third - 4, "Name");
    blank(box.left + third, second, third - 4, "Signed");
    blank(box.left + 2 * third, second, third, "Date");
}

/// Sheets in a style, and whether the cuts are listed on the sheet that shows their letters.
struct Setting {
    std::vector<Sheet> sheets;
    bool cuts_by_plan = true;
};

Setting set_in_style(const Drafting& drafting, const Course& course, const Ring& ring,
                     const Style& style) {
    Setting setting;
    const Schedule& schedule = drafting.schedule();
    const DomeForm& dome = *find_dome_form(schedule, ring.dome);
    const Ring* below = nullptr;
    if (const Course* under = course_numbered(schedule, course.number - 1))
        below = ring_of_dome(*under, ring.dome);
    const std::string title = sheet_title(drafting, course, ring);
    bool first_page = true;
    const auto start_page = [&] {
        Page page = new_page(drafting, first_page ? title : title + ", continued");
        first_page = false;
        const PaperBox head{page.body.left, page.body.top - head_height, page.body.right,
                            page.body.top};
        add_head(page.sheet, head, drafting, course, ring, dome);
        page.body.top = head.bottom - 1.5;
        return page;
    };
    Flow flow(drafting, start_page, style.text);

    add_notes(flow, drafting, "Before you lay this course", course.before, ring.dome);

    const Table tubes = tube_table(drafting, ring);
    const PlanBox plan = plan_box(drafting, ring, style);
    const double side = flow.width() - plan.width - 5;
    const TableLayout tubes_layout =
        lay_out(tubes, side, style.text, sizes::small, true, drafting.measure);
    const double facts = facts_height(course_facts(drafting, course, ring, below, dome), side,
                                      style.text, drafting.measure);
    const double with_tubes = facts + 3 + tubes_layout.height(tubes.rows.size());
    const bool tubes_beside = with_tubes <= style.plan_most;
    flow.space(1);
    flow.block(std::max(plan.height, tubes_beside ? with_tubes : facts),
               [&](Sheet& sheet, const PaperBox& box) {
                   add_plan_and_figures(sheet, box, drafting, course, ring, below, dome,
                                        tubes_beside ? &tubes : nullptr, style, plan);
               });
    const std::size_t plan_page = flow.pages();
    flow.space(0.5);
    std::string remarks = plan_legend(ring, below, plan.scale);
    for (const std::string& remark : tube_remarks(drafting, ring))
        remarks += " " + remark;
    flow.paragraph(remarks, std::max(sizes::small, 0.85 * style.text));
    if (!ring.cuts.empty()) {
        flow.table(style.cut_heading ? "Cuts, from the datum mark along the inside face" : "",
                   cut_table(drafting, ring, dome), style.text);
        setting.cuts_by_plan = flow.pages() == plan_page;
    }
    if (!tubes_beside) {
        flow.table(ring.kind == RingKind::cap ? "Bags to cut" : "Tubes to cut", in_two(tubes),
                   style.text);
    }
    add_after(flow, drafting, course, ring);
    if (course.top > dome.springline + 1e-6) {
        const HoldBox hold = hold_box(drafting, flow.width(), words::hold_points(ring), style.text);
        flow.space(1.5);
        flow.block(hold.height, [&](Sheet& sheet, const PaperBox& box) {
            add_hold_box(sheet, box, hold, style.text);
        });
    }
    flow.at_bottom(sign_height, [&](Sheet& sheet, const PaperBox& box) {
        add_sign_lines(sheet, box, drafting);
    });
    setting.sheets = flow.finish();
    return setting;
}

} // namespace

std::vector<Sheet> course_pages(const Drafting& drafting, const Course& course, const Ring& ring) {
    // As large as can be on the fewest sheets, the cuts beside their letters.
    std::optional<Setting> best;
    for (const Style& style : styles) {
        Setting setting = set_in_style(drafting, course, ring, style);
        const bool better = !best || setting.sheets.size() < best->sheets.size() ||
                            (setting.sheets.size() == best->sheets.size() && setting.cuts_by_plan &&
                             !best->cuts_by_plan);
        if (better)
            best = std::move(setting);
        if (best->sheets.size() == 1)
            break;
    }
    return std::move(best->sheets);
}

} // namespace coilwright
