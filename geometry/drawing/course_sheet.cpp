#include "geometry/drawing/barred_course.hpp"
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

namespace coilwright {
namespace {

/// What the sheets of a dome in a course tell, in whatever style.
struct DomeContents {
    GroundBox ground; // of the plan
    std::optional<CoursePart> below;
    std::vector<Fact> facts;
    Table tubes, cuts, bonds, piers, sleeves;
    std::string bond_remark;
    std::vector<std::string> tube_remarks;
};

DomeContents dome_contents(const Drafting& drafting, const CoursePart& part) {
    DomeContents told;
    told.ground = plan_extent(drafting.plan, part);
    told.below = part_in(drafting.schedule(), part.course->number - 1, part.id());
    told.facts = course_facts(drafting, part, told.below ? &*told.below : nullptr);
    told.tubes = tube_table(drafting, part);
    told.cuts = cut_table(drafting, part);
    told.bonds = bond_table(drafting, part);
    told.piers = pier_table(drafting, part);
    told.sleeves = sleeve_table(drafting, part);
    told.bond_remark = bond_remark(drafting, part);
    told.tube_remarks = tube_remarks(drafting, part);
    return told;
}

/// The sheets of a dome in a course, in one style.
class DomeSheets {
public:
    DomeSheets(const Drafting& drafting, const CoursePart& part, const DomeContents& told,
               const SheetStyle& style, bool draw)
        : drafting_(drafting), part_(part), told_(told), ring_(*part.rings.front()), style_(style),
          flow_(
              drafting, [this] { return start_page(); }, style.text, style.row_part(), draw) {}

    SheetSetting set() {
        SheetSetting setting;
        const PlanBox plan = fit_plan(drafting_, told_.ground, style_);
        if (style_.half) {
            if (fits_half())
                set_half(plan);
            setting.sheets = fits_half() ? flow_.finish() : std::vector<Sheet>{};
            return setting;
        }
        add_before(flow_, drafting_, part_);
        add_plan_and_figures(plan);
        const std::size_t plan_page = flow_.pages();
        add_legend(plan);
        const Table& cuts = told_.cuts;
        if (!cuts.rows.empty()) {
            flow_.table(style_.headings ? "Cuts, from the datum mark along the inside face" : "",
                        cuts, style_.text);
            setting.tables_by_plan = flow_.pages() == plan_page;
        }
        add_elements();
        if (!tubes_beside_)
            flow_.table(ring_.kind == RingKind::cap ? "Bags to cut" : "Tubes to cut",
                        in_two(told_.tubes), style_.text);
        for (const Fan* fan : fans_of(drafting_.plan, part_))
            add_fan(flow_, drafting_, *fan, style_.text);
        for (const Lintel* lintel : lintels_of(drafting_.plan, part_))
            add_lintel(flow_, drafting_, *lintel, style_.text);
        add_after(flow_, drafting_, part_, style_);
        if (part_.course->top > part_.dome->springline + 1e-6)
            add_rules(flow_, drafting_, words::hold_points(ring_), style_.text);
        add_sign_lines(flow_, "Compass set to", style_);
        setting.sheets = flow_.finish();
        return setting;
    }

private:
    const CoursePart* below() const { return told_.below ? &*told_.below : nullptr; }

    Page start_page() { return course_page(drafting_, part_, ++page_, style_.sheets, style_.half); }

    /// Piers, fans, lintels and sleeves need a whole sheet.
    bool fits_half() const {
        return part_.straights.empty() && fans_of(drafting_.plan, part_).empty() &&
               lintels_of(drafting_.plan, part_).empty() && told_.sleeves.rows.empty();
    }

    /// On half a sheet all tables stand beside the plan.
    void set_half(const PlanBox& plan) {
        add_before(flow_, drafting_, part_);
        add_half_tables(plan);
        add_legend(plan);
        std::string bond;
        const Table& bonds = told_.bonds;
        for (const std::vector<std::string>& row : bonds.rows)
            bond += row[0] + ": " + row[1] + ". ";
        if (!bond.empty())
            flow_.paragraph(bond + told_.bond_remark, sizes::least, true);
        add_after(flow_, drafting_, part_, style_);
        if (part_.course->top > part_.dome->springline + 1e-6)
            add_rules(flow_, drafting_, words::hold_points(ring_), sizes::least);
        add_sign_lines(flow_, "Compass set to", style_);
    }

    void add_half_tables(const PlanBox& plan) {
        const MeasureText& measure = drafting_.measure;
        const double gap = 4, side = flow_.width() - plan.width - gap, half = (side - gap) / 2;
        const std::vector<Fact>& facts = told_.facts;
        const std::size_t left = (facts.size() + 1) / 2;
        const std::vector<Fact> columns[2] = {{facts.begin(), facts.begin() + left},
                                              {facts.begin() + left, facts.end()}};
        const double facts_high = std::max(facts_height(columns[0], half, style_.text, measure),
                                           facts_height(columns[1], half, style_.text, measure));
        const auto fitted = [&](const Table& table) {
            return lay_out(table, side, style_.text, sizes::least, true, measure,
                           style_.row_part());
        };
        const Table tubes = in_two(told_.tubes);
        const Table& cuts = told_.cuts;
        const TableLayout tubes_layout = fitted(tubes), cuts_layout = fitted(cuts);
        const double between = 2;
        const double high =
            facts_high + between + tubes_layout.height(tubes.rows.size()) +
            (cuts.rows.empty() ? 0 : between + cuts_layout.height(cuts.rows.size()));
        flow_.space(1);
        flow_.block(std::max(plan.height, high), [&](Sheet& sheet, const PaperBox& box) {
            draw_plan(sheet, {box.left, box.bottom, box.left + plan.width, box.top}, plan);
            const double x = box.left + plan.width + gap;
            double y = box.top;
            for (const int i : {0, 1})
                add_facts(sheet, {x + i * (half + gap), y}, half, columns[i], style_.text, measure);
            y -= facts_high + between;
            add_table(sheet, tubes, tubes_layout, {x, y}, 0, tubes.rows.size(), measure);
            y -= tubes_layout.height(tubes.rows.size()) + between;
            if (!cuts.rows.empty())
                add_table(sheet, cuts, cuts_layout, {x, y}, 0, cuts.rows.size(), measure);
        });
    }

    void draw_plan(Sheet& sheet, const PaperBox& box, const PlanBox& plan) const {
        const std::vector<CompassReading> readings =
            compass_readings(ring_, *part_.dome, drafting_.plan.design);
        const bool axis_first = !readings.empty() && readings.front().metres == ring_.inside_radius;
        add_box(sheet, box, pens::fine);
        Placer placer(grown(box, -1), drafting_.measure);
        const CoursePlan view{
            drafting_.plan, part_,   below(),
            true,           "datum", axis_first ? drafting_.length(ring_.inside_radius) : ""};
        add_course_plan(sheet, placer, view, frame_in(box, plan));
    }

    /// Plan on the left, figures and tubes to cut on the right; or the plan across the sheet and
    /// both under it.
    void add_plan_and_figures(const PlanBox& plan) {
        const std::vector<Fact>& facts = told_.facts;
        const Table& tubes = told_.tubes;
        const MeasureText& measure = drafting_.measure;
        const double gap = 5;
        const double side =
            style_.wide ? (flow_.width() - gap) / 2 : flow_.width() - plan.width - gap;
        const TableLayout layout =
            lay_out(tubes, side, style_.text, std::min(style_.text, sizes::small), true, measure,
                    style_.row_part());
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
        std::string remarks = style_.half ? "From above, north up, " + plan.scale.text + "."
                                          : plan_legend(drafting_, part_, below(), plan.scale);
        const std::vector<std::string>& all = told_.tube_remarks;
        // On half a sheet what is said before the start is not said again.
        for (std::size_t i = style_.half ? 1 : 0; i < all.size(); ++i)
            remarks += " " + all[i];
        if (!style_.half && !style_.headings && !ring_.cuts.empty())
            remarks += " Cuts are measured from the datum mark along the inside face.";
        flow_.paragraph(remarks,
                        style_.half ? sizes::least : std::max(sizes::small, 0.85 * style_.text));
    }

    /// Bond, piers and sleeves.
    void add_elements() {
        const auto table = [&](const std::string& heading, const Table& rows) {
            if (!rows.rows.empty())
                flow_.table(style_.headings ? heading : "", rows, style_.text);
        };
        table("", told_.bonds);
        if (!told_.bond_remark.empty())
            flow_.paragraph(told_.bond_remark, 0, true);
        table("Buttresses", told_.piers);
        table("Sleeves", told_.sleeves);
    }

    const Drafting& drafting_;
    const CoursePart& part_;
    const DomeContents& told_;
    const Ring& ring_;
    const SheetStyle& style_;
    int page_ = 0;
    bool tubes_beside_ = true;
    Flow flow_;
};

} // namespace

namespace {

/// By how much more tightly than usual letters stand round a plan: eight have room.
double crowding(const CoursePart& part) {
    std::size_t letters = 0;
    for (const Ring* ring : part.rings)
        letters += ring->cuts.size();
    return std::max(1.0, static_cast<double>(letters) / 8);
}

} // namespace

std::vector<Sheet> dome_course_pages(const Drafting& drafting, const CoursePart& part) {
    if (barred_from(drafting.plan, part) > 0)
        return barred_course_pages(drafting, part);
    const DomeContents told = dome_contents(drafting, part);
    return best_setting(
        [&](const SheetStyle& style) {
            return fit_plan(drafting, told.ground, style)
                       .scale.on_paper(part.rings.front()->width) /
                   crowding(part);
        },
        [&](const SheetStyle& style, bool draw) {
            return DomeSheets(drafting, part, told, style, draw).set();
        });
}

std::optional<Sheet> dome_course_half(const Drafting& drafting, const CoursePart& part) {
    if (barred_from(drafting.plan, part) > 0)
        return std::nullopt; // its warning takes a sheet of its own
    const DomeContents told = dome_contents(drafting, part);
    return half_setting([&](const SheetStyle& style, bool draw) {
        return DomeSheets(drafting, part, told, style, draw).set();
    });
}

} // namespace coilwright
