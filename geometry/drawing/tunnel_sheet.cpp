#include "geometry/drawing/course_head.hpp"
#include "geometry/drawing/course_tables.hpp"
#include "geometry/drawing/crew_pages.hpp"
#include "geometry/drawing/element_tables.hpp"
#include "geometry/drawing/figures.hpp"
#include "geometry/drawing/head_figures.hpp"
#include "geometry/drawing/plan_box.hpp"
#include "geometry/drawing/sheet_parts.hpp"
#include "geometry/drawing/tunnel_view.hpp"
#include "geometry/drawing/words.hpp"

#include <algorithm>

namespace coilwright {
namespace {

class TunnelSheets {
public:
    TunnelSheets(const Drafting& drafting, const CoursePart& part, const GroundBox& ground,
                 const SheetStyle& style, bool draw)
        : drafting_(drafting), part_(part), ground_(ground), style_(style),
          flow_(
              drafting, [this] { return start_page(); }, style.text, style.row_part(), draw) {}

    SheetSetting set() {
        SheetSetting setting;
        const PlanBox plan = fit_plan(drafting_, ground_, style_);
        add_before(flow_, drafting_, part_);
        add_plan_and_figures(plan);
        const std::size_t plan_page = flow_.pages();
        flow_.space(0.5);
        if (style_.half)
            flow_.paragraph("From above, north up, " + plan.scale.text +
                                ". Distances run along the axis from the pole's axis of '" +
                                part_.tunnel->from + "'.",
                            sizes::least);
        else
            flow_.paragraph(words::tunnel_legend(drafting_.plan, *part_.tunnel, plan.scale.text),
                            std::max(sizes::small, 0.85 * style_.text));
        flow_.table(style_.headings ? "Tubes to cut, and where they lie" : "",
                    straight_table(drafting_, part_), style_.text);
        if (const std::string remark = short_tube_remark(part_); !remark.empty())
            flow_.paragraph(remark, sizes::small);
        setting.tables_by_plan = flow_.pages() == plan_page;
        const Table sleeves = sleeve_table(drafting_, part_);
        if (!sleeves.rows.empty())
            flow_.table(style_.headings ? "Sleeves" : "", sleeves, style_.text);
        for (const Lintel* lintel : lintels_of(drafting_.plan, part_))
            add_lintel(flow_, drafting_, *lintel, style_.text);
        add_after(flow_, drafting_, part_, style_);
        const std::vector<std::string> rules = words::tunnel_hold_points(part_);
        if (!rules.empty())
            add_rules(flow_, drafting_, rules, style_.text);
        add_sign_lines(flow_, "Gauge set to", style_);
        setting.sheets = flow_.finish();
        return setting;
    }

private:
    Page start_page() { return course_page(drafting_, part_, ++page_, style_.sheets, style_.half); }

    void add_plan_and_figures(const PlanBox& plan) {
        const std::vector<Fact> facts = tunnel_facts(drafting_, part_);
        const MeasureText& measure = drafting_.measure;
        const double gap = 5;
        const double side = style_.wide ? flow_.width() : flow_.width() - plan.width - gap;
        const double facts_high = facts_height(facts, side, style_.text, measure);
        const auto draw_plan = [&](Sheet& sheet, const PaperBox& box) {
            add_box(sheet, box, pens::fine);
            Placer placer(grown(box, -1), measure);
            add_tunnel_plan(sheet, placer, drafting_.plan, part_, frame_in(box, plan));
        };
        flow_.space(1);
        if (style_.wide) {
            flow_.block(plan.height, draw_plan);
            flow_.space(2);
            flow_.block(facts_high, [&](Sheet& sheet, const PaperBox& box) {
                add_facts(sheet, {box.left, box.top}, side, facts, style_.text, measure);
            });
            return;
        }
        flow_.block(std::max(plan.height, facts_high), [&](Sheet& sheet, const PaperBox& box) {
            draw_plan(sheet, {box.left, box.bottom, box.left + plan.width, box.top});
            add_facts(sheet, {box.left + plan.width + gap, box.top}, side, facts, style_.text,
                      measure);
        });
    }

    const Drafting& drafting_;
    const CoursePart& part_;
    const GroundBox& ground_;
    const SheetStyle& style_;
    int page_ = 0;
    Flow flow_;
};

} // namespace

std::vector<Sheet> tunnel_course_pages(const Drafting& drafting, const CoursePart& part) {
    const GroundBox ground = tunnel_extent(drafting.plan, part);
    return best_setting(
        [&](const SheetStyle& style) {
            return fit_plan(drafting, ground, style).scale.on_paper(part.tunnel->width);
        },
        [&](const SheetStyle& style, bool draw) {
            return TunnelSheets(drafting, part, ground, style, draw).set();
        });
}

std::optional<Sheet> tunnel_course_half(const Drafting& drafting, const CoursePart& part) {
    if (form_carries(part)) // its warning takes a sheet of its own
        return std::nullopt;
    const GroundBox ground = tunnel_extent(drafting.plan, part);
    return half_setting([&](const SheetStyle& style, bool draw) {
        return TunnelSheets(drafting, part, ground, style, draw).set();
    });
}

} // namespace coilwright
