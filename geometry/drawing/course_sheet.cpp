#include "geometry/drawing/course_head.hpp"
#include "geometry/drawing/course_tables.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/element_tables.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/head_figures.hpp"
#include "geometry/drawing/plan_box.hpp"
#include "geometry/drawing/plan_view.hpp"
#include "geometry/drawing/sheet_parts.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>
#include <utility>

namespace coilwright {
namespace {

/// The sheets of a dome in a course, in one style.
class DomeSheets {
public:
    DomeSheets(const Drafting& drafting, const CoursePart& part, const GroundBox& ground,
               const SheetStyle& style, bool draw)
        : drafting_(drafting), part_(part), ground_(ground),
          below_(part_in(drafting.schedule(), part.course->number - 1, part.id())),
          ring_(*part.rings.front()), style_(style), draw_(draw),
          flow_(
              drafting, [this] { return start_page(); }, style.text) {}

    SheetSetting set() {
        SheetSetting setting;
        const PlanBox plan = fit_plan(drafting_, ground_, style_);
        add_before(flow_, drafting_, part_);
        add_plan_and_figures(plan);
        const std::size_t plan_page = flow_.pages();
        add_legend(plan);
        const Table cuts = cut_table(drafting_, part_);
        if (!cuts.rows.empty()) {
            flow_.table(style_.headings ? "Cuts, from the datum mark along the inside face" : "",
                        cuts, style_.text);
            setting.tables_by_plan = flow_.pages() == plan_page;
        }
        add_elements();
        if (!tubes_beside_)
            flow_.table(ring_.kind == RingKind::cap ? "Bags to cut" : "Tubes to cut",
                        in_two(tube_table(drafting_, part_)), style_.text);
        for (const Fan* fan : fans_of(drafting_.plan, part_))
            add_fan(flow_, drafting_, *fan, style_.text, draw_);
        for (const Lintel* lintel : lintels_of(drafting_.plan, part_))
            add_lintel(flow_, drafting_, *lintel, style_.text, draw_);
        add_after(flow_, drafting_, part_);
        if (part_.course->top > part_.dome->springline + 1e-6)
            add_rules(flow_, drafting_, words::hold_points(ring_), style_.text);
        add_sign_lines(flow_, "Compass set to");
        setting.sheets = flow_.finish();
        return setting;
    }

private:
    Page start_page() { return course_page(drafting_, part_, std::exchange(first_page_, false)); }

    void draw_plan(Sheet& sheet, const PaperBox& box, const PlanBox& plan) const {
        if (!draw_)
            return;
        const std::vector<CompassReading> readings =
            compass_readings(ring_, *part_.dome, drafting_.plan.design);
        const bool axis_first = !readings.empty() && readings.front().metres == ring_.inside_radius;
        add_box(sheet, box, pens::fine);
        Placer placer(grown(box, -1), drafting_.measure);
        const CoursePlan view{
            drafting_.plan, part_,   below_ ? &*below_ : nullptr,
            true,           "datum", axis_first ? drafting_.length(ring_.inside_radius) : ""};
        add_course_plan(sheet, placer, view, frame_in(box, plan));
    }

    /// Plan on the left, figures and tubes to cut on the right; or the plan across the sheet and
    /// both under it.
    void add_plan_and_figures(const PlanBox& plan) {
        const std::vector<Fact> facts = course_facts(drafting_, part_, below_ ? &*below_ : nullptr);
        const Table tubes = tube_table(drafting_, part_);
        const MeasureText& measure = drafting_.measure;
        const double gap = 5;
        const double side =
            style_.wide ? (flow_.width() - gap) / 2 : flow_.width() - plan.width - gap;
        const TableLayout layout = lay_out(tubes, side, style_.text, sizes::small, true, measure);
        const double facts_high = facts_height(facts, side, style_.text, measure);
        const double tubes_high = layout.height(tubes.rows.size());
        flow_.space(1);
        if (style_.wide) {
            flow_.block(plan.height,
                        [&](Sheet& sheet, const PaperBox& box) { draw_plan(sheet, box, plan); });
            tubes_beside_ = tubes_high <= facts_high + 10;
            flow_.space(2);
            flow_.block(
                std::max(facts_high, tubes_beside_ ? tubes_high : 0.0),
                [&](Sheet& sheet, const PaperBox& box) {
                    add_facts(sheet, {box.left, box.top}, side, facts, style_.text, measure);
                    if (tubes_beside_)
                        add_table(sheet, tubes, layout, {box.left + side + gap, box.top}, 0,
                                  tubes.rows.size(), measure);
                });
            return;
        }
        tubes_beside_ = facts_high + 3 + tubes_high <= style_.plan_most;
        const double beside = facts_high + (tubes_beside_ ? 3 + tubes_high : 0);
        flow_.block(std::max(plan.height, beside), [&](Sheet& sheet, const PaperBox& box) {
            draw_plan(sheet, {box.left, box.bottom, box.left + plan.width, box.top}, plan);
            const double left = box.left + plan.width + gap;
            const double y = add_facts(sheet, {left, box.top}, side, facts, style_.text, measure);
            if (tubes_beside_)
                add_table(sheet, tubes, layout, {left, y - 3}, 0, tubes.rows.size(), measure);
        });
    }

    void add_legend(const PlanBox& plan) {
        flow_.space(0.5);
        std::string remarks =
            plan_legend(drafting_, part_, below_ ? &*below_ : nullptr, plan.scale);
        for (const std::string& remark : tube_remarks(drafting_, part_))
            remarks += " " + remark;
        flow_.paragraph(remarks, std::max(sizes::small, 0.85 * style_.text));
    }

    /// Bond, piers and sleeves.
    void add_elements() {
        const auto table = [&](const std::string& heading, const Table& rows) {
            if (!rows.rows.empty())
                flow_.table(style_.headings ? heading : "", rows, style_.text);
        };
        table("", bond_table(drafting_, part_));
        if (const std::string remark = bond_remark(drafting_, part_); !remark.empty())
            flow_.paragraph(remark, 0, true);
        table("Buttresses", pier_table(drafting_, part_));
        table("Sleeves", sleeve_table(drafting_, part_));
    }

    const Drafting& drafting_;
    const CoursePart& part_;
    const GroundBox& ground_;
    std::optional<CoursePart> below_;
    const Ring& ring_;
    const SheetStyle& style_;
    bool draw_;
    bool first_page_ = true;
    bool tubes_beside_ = true;
    Flow flow_;
};

} // namespace

std::vector<Sheet> dome_course_pages(const Drafting& drafting, const CoursePart& part) {
    const GroundBox ground = plan_extent(drafting.plan, part);
    return best_setting(
        [&](const SheetStyle& style) {
            return fit_plan(drafting, ground, style).scale.on_paper(part.rings.front()->width);
        },
        [&](const SheetStyle& style, bool draw) {
            return DomeSheets(drafting, part, ground, style, draw).set();
        });
}

} // namespace coilwright
