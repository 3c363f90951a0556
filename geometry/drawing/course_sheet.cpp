#include "geometry/drawing/course_tables.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/plan_view.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>

namespace coilwright {
namespace {

constexpr double head_height = 36; // mm, of the band with the course's number and setting
constexpr double plan_side = 106;  // of the square that holds the plan
constexpr double plan_rim = 13;    // around the ring for names and letters
constexpr double sign_height = 23; // of the lines to fill in at the end

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
void add_head(Sheet& sheet, const Box& box, const Drafting& drafting, const Course& course,
              const Ring& ring, const DomeForm& dome) {
    const MeasureText& measure = drafting.measure;
    constexpr double label = 3.8, number_size = 28;
    const std::string number = std::to_string(course.number);
    const double number_width = measure(number, number_size, true).width;
    const double divide = box.left + std::max(38.0, number_width + 9);
    add_box(sheet, box, pens::heavy);
    add_line(sheet, {divide, box.bottom}, {divide, box.top}, pens::heavy);
    add_text(sheet, {box.left + 3, box.top - 5.6}, "COURSE of " + std::to_string(dome.courses()),
             label, true);
    add_text(sheet, {(box.left + divide) / 2, box.bottom + 4.4}, number, number_size, true,
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
    std::string under =
        ring.kind == RingKind::cap ? "No compass: short bags laid side by side" : "";
    for (std::size_t i = 1; i < readings.size(); ++i)
        under +=
            (i > 1 ? " · " : "") + readings[i].from + " " + drafting.length(readings[i].metres);
    if (ring.kind == RingKind::ring && drafting.plan.design.course.tamp_gap > 0)
        under += (under.empty() ? "" : " · ") + std::string("lay tubes ") +
                 drafting.length(drafting.plan.design.course.tamp_gap) + " outside, then tamp";
    const double what_size = fitting_size(what, room, label, sizes::least, true, measure);
    add_text(sheet, {left, box.top - 5.6}, shortened(what, room, what_size, true, measure),
             what_size, true);
    const double size = fitting_size(setting, room, 24, 10, true, measure);
    const double middle = under.empty() ? box.bottom + 14 : box.bottom + 17.5;
    add_text(sheet, {left - 0.04 * size, middle - 0.365 * size}, setting, size, true);
    if (!under.empty()) {
        const double under_size =
            fitting_size(under, room, sizes::strong, sizes::least, true, measure);
        add_text(sheet, {left, box.bottom + 3}, shortened(under, room, under_size, true, measure),
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
        if (!headed)
            flow.heading(heading);
        headed = true;
        const bool warning = note.text.find("DO NOT") != std::string::npos ||
                             note.text.find("FORM CARRIES") != std::string::npos;
        flow.item(note.text, Flow::Mark::tick, sizes::body, warning);
    }
}

/// Plan on the left; figures and tubes to cut on the right.
void add_plan_and_figures(Sheet& sheet, const Box& box, const Drafting& drafting,
                          const Course& course, const Ring& ring, const Ring* below,
                          const DomeForm& dome, const Table* tubes) {
    const MeasureText& measure = drafting.measure;
    const Box square{box.left, box.top - plan_side, box.left + plan_side, box.top};
    add_box(sheet, square, pens::fine);
    Placer placer(grown(square, -1), measure);
    const double radius = ring.outside_radius * 1.02;
    const double room = plan_side - 2 * plan_rim;
    const Scale scale = largest_scale(2 * radius, 2 * radius, room, room, drafting.unit());
    const PlanFrame frame{square.centre(), scale.on_paper(1)};
    const std::vector<CompassReading> readings = compass_readings(ring, dome, drafting.plan.design);
    const bool axis_first = !readings.empty() && readings.front().metres == ring.inside_radius;
    const CoursePlan plan{drafting.schedule(),
                          dome,
                          course,
                          ring,
                          below,
                          true,
                          "datum",
                          axis_first ? drafting.length(ring.inside_radius) : ""};
    // The scale stands in the lower left corner.
    const std::string scale_text = scale.text;
    TextItem scale_item =
        text_at({square.left + 2, square.bottom + 1.8}, scale_text, sizes::small, true);
    placer.take(corners(scale_item, measure));
    sheet.items.push_back(scale_item);
    add_course_plan(sheet, placer, plan, frame);

    const double left = square.right + 5, width = box.right - left;
    double y = add_facts(sheet, {left, box.top}, width,
                         course_facts(drafting, course, ring, below, dome), measure);
    if (tubes) {
        const TableLayout layout = lay_out(*tubes, width, sizes::body, sizes::small, true, measure);
        add_table(sheet, *tubes, layout, {left, y - 3}, 0, tubes->rows.size(), measure);
    }
}

void add_sign_lines(Sheet& sheet, const Box& box, const Drafting& drafting) {
    const auto blank = [&](double x, double y, double width, const std::string& label) {
        add_text(sheet, {x, y}, label, sizes::small, true);
        const double used = drafting.measure(label, sizes::small, true).width + 1.5;
        add_line(sheet, {x + used, y - 0.6}, {x + width, y - 0.6}, pens::seen);
    };
    const double half = box.width() / 2, third = box.width() / 3;
    const double first = box.top - 9.5, second = box.top - 20;
    blank(box.left, first, half - 4, "Height reached");
    blank(box.left + half, first, half, "Compass set to");
    blank(box.left, second, third - 4, "Name");
    blank(box.left + third, second, third - 4, "Signed");
    blank(box.left + 2 * third, second, third, "Date");
}

} // namespace

std::vector<Sheet> course_pages(const Drafting& drafting, const Course& course, const Ring& ring) {
    const Schedule& schedule = drafting.schedule();
    const DomeForm& dome = *find_dome_form(schedule, ring.dome);
    const Ring* below = nullptr;
    for (const Course& other : schedule.courses)
        if (other.number == course.number - 1)
            below = ring_of_dome(other, ring.dome);
    const std::string title = sheet_title(drafting, course, ring);
    bool first_page = true;
    Flow flow(drafting, [&] {
        Page page = new_page(drafting, first_page ? title : title + ", continued");
        first_page = false;
        const Box head{page.body.left, page.body.top - head_height, page.body.right, page.body.top};
        add_head(page.sheet, head, drafting, course, ring, dome);
        page.body.top = head.bottom - 2.5;
        return page;
    });

    add_notes(flow, drafting, "Before you lay this course", course.before, ring.dome);

    const Table tubes = tube_table(drafting, ring);
    const double side = flow.width() - plan_side - 5;
    const TableLayout tubes_layout =
        lay_out(tubes, side, sizes::body, sizes::small, true, drafting.measure);
    const double facts =
        facts_height(course_facts(drafting, course, ring, below, dome), side, drafting.measure);
    const bool tubes_beside = facts + 3 + tubes_layout.height(tubes.rows.size()) <= plan_side;
    flow.space(1.5);
    flow.block(plan_side, [&](Sheet& sheet, const Box& box) {
        add_plan_and_figures(sheet, box, drafting, course, ring, below, dome,
                             tubes_beside ? &tubes : nullptr);
    });
    flow.space(1);
    flow.paragraph(plan_legend(ring, below), sizes::small);
    if (!ring.cuts.empty()) {
        flow.heading("Cuts, from the datum mark along the inside face");
        flow.table(cut_table(drafting, ring, dome));
    }
    if (!tubes_beside) {
        flow.heading(ring.kind == RingKind::cap ? "Bags to cut" : "Tubes to cut");
        flow.table(in_two(tubes));
    }
    for (const std::string& remark : tube_remarks(drafting, ring))
        flow.paragraph(remark, sizes::small);
    add_notes(flow, drafting, "When it is tamped", course.after, ring.dome);
    if (ring.kind == RingKind::ring && !ring.curb && course.top > dome.springline + 1e-6) {
        flow.heading("Above the springline");
        for (const std::string& rule : words::hold_points())
            flow.item(rule, Flow::Mark::dot, sizes::body, true);
    }
    flow.block(sign_height,
               [&](Sheet& sheet, const Box& box) { add_sign_lines(sheet, box, drafting); });
    return flow.finish();
}

} // namespace coilwright
