#include "geometry/report/owner_report.hpp"

#include "geometry/report/bars.hpp"
#include "geometry/takeoff/amount_text.hpp"
#include "geometry/takeoff/orders.hpp"

#include <algorithm>

namespace coilwright {

namespace {

std::string percent(double share) {
    return fixed_text(100 * share, 0) + " %";
}

std::string stage_name(Phase phase) {
    switch (phase) {
    case Phase::trench:
        return "Trench";
    case Phase::base:
        return "Base courses";
    case Phase::walls:
        return "Walls and roof";
    case Phase::openings:
        return "Doors and windows";
    case Phase::plaster:
        return "Plaster";
    case Phase::finish:
        return "Paint and floor";
    }
    return {};
}

/// A figure in large type with what it is above and what belongs to it below.
struct Headline {
    std::string what, figure, below;
};

class Report {
public:
    Report(const Drafting& drafting, const WorkedOut& out, double size)
        : drafting_(drafting), out_(out), size_(size) {}

    std::vector<Sheet> pages() {
        std::vector<Sheet> sheets = money_page();
        for (Sheet& sheet : days_page())
            sheets.push_back(std::move(sheet));
        return sheets;
    }

private:
    const TakeOff& take() const { return out_.take; }
    const Costs& costs() const { return out_.costs; }
    bool priced() const { return !costs().items.empty(); }
    std::string money(double amount) const { return money_text(amount, costs().currency); }
    std::string area(double square_metres) const {
        return amount_text(square_metres, AmountUnit::square_metre, take().unit);
    }

    Flow flow_of(const std::string& title) const {
        return Flow(
            drafting_, [this, title] { return titled_page(drafting_, title, ""); }, size_);
    }

    std::vector<Sheet> money_page() const {
        Flow flow = flow_of("What it takes: money and days");
        add_headlines(flow);
        if (!out_.works.note.empty())
            add_framed(flow, out_.works.note);
        if (priced()) {
            flow.heading("What the money goes for (line: from the low to the high price)");
            add_item_bars(flow);
            add_share_bars(flow);
            if (!costs().unpriced.empty())
                flow.paragraph("Without a price, and in no sum: " + listed(costs().unpriced) + ".");
        } else {
            flow.paragraph(
                "No prices are known. They stand in a works file, NAME.works beside the "
                "design: what each thing costs by the roll, the bag, the yard or the day.");
            add_purchases(flow);
        }
        return flow.finish();
    }

    std::vector<Sheet> days_page() const {
        Flow flow = flow_of("What it takes: stages and orders");
        flow.heading("Stages of the work on the calendar");
        if (!out_.days.stages.empty())
            flow.block(stages_height(out_.days, size_), [&](Sheet& sheet, const PaperBox& box) {
                add_stages(sheet, box, out_.days, size_, drafting_.measure);
            });
        if (!out_.days.ended)
            flow.paragraph("More than ten years: the plan is cut off.");
        flow.heading("What to have on site when");
        for (const OrderGroup& group : order_list(take(), out_.days)) {
            std::string when = stage_name(group.phase);
            if (group.calendar)
                when += ", day " + std::to_string(*group.calendar + 1);
            if (group.date)
                when += ", " + date_text(*group.date);
            std::string what;
            for (const OrderLine& line : group.lines)
                what += (what.empty() ? "" : "; ") + line.name + " " + order_text(line);
            flow.item(when + ": " + what + ".", Flow::Mark::tick);
        }
        flow.heading("What all of this assumes");
        for (const std::string& note : take().notes)
            if (note != out_.works.note)
                flow.item(note, Flow::Mark::dot);
        for (const std::string& note : out_.days.notes)
            flow.item(note, Flow::Mark::dot);
        flow.item(
            "Tools, scaffold, wiring, carriage and the permit are not in it. How each amount was "
            "worked out: take-off.xlsx, sheet Amounts.",
            Flow::Mark::dot);
        return flow.finish();
    }

    std::string order_text(const OrderLine& line) const {
        const TakeOffItem& item = *find_item(take(), line.item);
        if (line.packs == 0)
            return amount_text(line.amount, item.unit, take().unit);
        TakeOffItem part = item;
        part.packs = line.packs;
        return purchase_text(part, take().unit);
    }

    static std::string listed(const std::vector<std::string>& names) {
        std::string text;
        for (const std::string& name : names)
            text += (text.empty() ? "" : ", ") + name;
        return text;
    }

    std::vector<Headline> headlines() const {
        const DayPlan& days = out_.days;
        std::vector<Headline> all;
        if (priced())
            all.push_back({"Likely cost", money(costs().total.likely),
                           money_text(costs().total.low, "") + " to " +
                               money_text(costs().total.high, "") +
                               " if all prices are low or high; nine times in ten under " +
                               money_text(costs().simulated.nine_tenths, "")});
        else
            all.push_back({"Likely cost", "no prices", "see below"});
        std::string when = "within " + std::to_string(days.calendar_days) +
                           " on the calendar, a crew of " + std::to_string(out_.works.crew.size);
        if (!days.days.empty() && days.days.front().date)
            when += ", " + date_text(*days.days.front().date) + " to " +
                    date_text(*days.days.back().date);
        all.push_back({"Days of work", std::to_string(days.working_days), when});
        if (priced() && costs().per_floor_area > 0) {
            const bool feet = take().unit == DisplayUnit::feet;
            all.push_back({feet ? "A square foot of floor" : "A square metre of floor",
                           money(costs().per_floor_area * area_unit()),
                           "floor between the bags: " + area(take().floor_area)});
        } else {
            all.push_back({"Floor between the bags", area(take().floor_area), ""});
        }
        return all;
    }

    double area_unit() const { return 1 / shown_amount(1, AmountUnit::square_metre, take().unit); }

    void add_headlines(Flow& flow) const {
        constexpr double height = 33, gap = 4;
        const std::vector<Headline> all = headlines();
        flow.block(height, [&](Sheet& sheet, const PaperBox& box) {
            const double wide = (box.width() - gap * (static_cast<double>(all.size()) - 1)) /
                                static_cast<double>(all.size());
            double left = box.left;
            for (const Headline& one : all) {
                const PaperBox frame{left, box.bottom + 1, left + wide, box.top};
                const double inner = wide - 5;
                add_box(sheet, frame, pens::cut);
                add_text(sheet, {left + 2.5, box.top - 5}, one.what, sizes::body, true);
                const double size = fitting_size(one.figure, inner, 9, 4, true, drafting_.measure);
                add_text(sheet, {left + 2.5, box.top - 14}, one.figure, size, true);
                add_lines(sheet, {left + 2.5, box.top - 16.5},
                          wrapped(one.below, inner, sizes::small, false, drafting_.measure, 3),
                          sizes::small, false);
                left += wide + gap;
            }
        });
    }

    void add_framed(Flow& flow, const std::string& text) const {
        flow.space(2);
        const auto lines = wrapped(text, flow.width() - 6, sizes::body, true, drafting_.measure, 3);
        flow.block(lines_height(lines.size(), sizes::body) + 3,
                   [&](Sheet& sheet, const PaperBox& box) {
                       add_box(sheet, box, pens::heavy);
                       add_lines(sheet, {box.left + 3, box.top - 1}, lines, sizes::body, true);
                   });
    }

    void add_item_bars(Flow& flow) const {
        std::vector<const ItemCost*> items;
        for (const ItemCost& item : costs().items)
            items.push_back(&item);
        std::stable_sort(items.begin(), items.end(), [](const ItemCost* a, const ItemCost* b) {
            return a->cost.likely > b->cost.likely;
        });
        constexpr std::size_t most = 12;
        std::vector<Bar> bars;
        Bar rest{"all the rest", 0, "", 0, 0};
        double rest_share = 0;
        for (std::size_t i = 0; i < items.size(); ++i) {
            const ItemCost& item = *items[i];
            if (i + 1 < most || items.size() <= most) {
                bars.push_back({item.name, item.cost.likely,
                                money_text(item.cost.likely, "") + "   " + percent(item.share),
                                item.cost.low, item.cost.high});
                continue;
            }
            rest.value += item.cost.likely;
            rest.low += item.cost.low;
            rest.high += item.cost.high;
            rest_share += item.share;
        }
        if (rest_share > 0) {
            rest.text = money_text(rest.value, "") + "   " + percent(rest_share);
            bars.push_back(rest);
        }
        flow.block(bars_height(bars.size(), size_), [&](Sheet& sheet, const PaperBox& box) {
            add_bars(sheet, box, bars, size_, drafting_.measure);
        });
    }

    static std::vector<Bar> share_bars(const std::vector<CostShare>& shares, bool phases) {
        std::vector<CostShare> sorted = shares;
        if (!phases)
            std::stable_sort(
                sorted.begin(), sorted.end(),
                [](const CostShare& a, const CostShare& b) { return a.likely > b.likely; });
        constexpr std::size_t most = 8;
        std::vector<Bar> bars;
        CostShare rest{"all the rest", 0, 0};
        const auto add = [&](const CostShare& one, const std::string& name) {
            bars.push_back(
                {name, one.likely, money_text(one.likely, "") + "  " + percent(one.share), 0, 0});
        };
        for (std::size_t i = 0; i < sorted.size(); ++i) {
            std::string name = sorted[i].name;
            if (phases)
                for (const Phase phase : all_phases)
                    if (word(phase) == name)
                        name = stage_name(phase);
            if (!phases && name == whole_building) // work, trench, floor: of no single part
                name = "whole building";
            if (i + 1 < most || sorted.size() <= most) {
                add(sorted[i], name);
            } else {
                rest.likely += sorted[i].likely;
                rest.share += sorted[i].share;
            }
        }
        if (rest.likely > 0)
            add(rest, rest.name);
        return bars;
    }

    /// By stage and by part of the building, side by side.
    void add_share_bars(Flow& flow) const {
        const std::vector<Bar> phases = share_bars(costs().by_phase, true),
                               elements = share_bars(costs().by_element, false);
        const double head = size_ * 2.2;
        const double height = head + bars_height(std::max(phases.size(), elements.size()), size_);
        flow.space(2);
        flow.block(height, [&](Sheet& sheet, const PaperBox& box) {
            const double middle = box.centre().x();
            for (const bool left : {true, false}) {
                const PaperBox half{left ? box.left : middle + 4, box.bottom,
                                    left ? middle - 4 : box.right, box.top - head};
                add_text(sheet, {half.left, box.top - 1.4 * size_},
                         left ? "By stage of the work" : "By part of the building", size_, true);
                add_bars(sheet, half, left ? phases : elements, size_, drafting_.measure);
            }
        });
        flow.space(2);
    }

    void add_purchases(Flow& flow) const {
        Table table{{{{"what"}, Align::left, false},
                     {{"needed"}, Align::right, false},
                     {{"to buy"}, Align::right, true}},
                    {}};
        for (const TakeOffItem& item : take().items)
            table.rows.push_back({item.name, amount_text(item.amount, item.unit, take().unit),
                                  purchase_text(item, take().unit)});
        flow.table("What to buy", table, size_, sizes::least);
    }

    const Drafting& drafting_;
    const WorkedOut& out_;
    double size_;
};

} // namespace

std::vector<Sheet> owner_report(const BuildingPlan& plan, const WorkedOut& out,
                                const PaperSize& paper, const MeasureText& measure) {
    const Drafting drafting{plan, paper, measure};
    std::vector<Sheet> sheets;
    for (double size = sizes::body; size > sizes::least - 1e-9; size -= 0.2) {
        sheets = Report(drafting, out, size).pages();
        if (sheets.size() <= 2)
            break;
    }
    number_sheets(sheets);
    return sheets;
}

} // namespace coilwright
