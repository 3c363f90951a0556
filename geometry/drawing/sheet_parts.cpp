#include "geometry/drawing/sheet_parts.hpp"

#include <algorithm>
#include <iterator>
#include <optional>
#include <utility>

namespace coilwright {
namespace {

constexpr double sign_height = 19;      // mm, of the lines to fill in at the end
constexpr double low_sign_height = 9.5; // in one row
constexpr double half_sign_height = 7;  // on half a sheet

constexpr SheetStyle styles[] = {
    {4.4, 116, 9, true, false},         {4.4, 104, 9, true, false},
    {4.0, 106, 9, true, false},         {4.0, 98, 9, false, false},
    {4.0, 88, 8.5, false, false},       {3.7, 98, 8.5, false, false},
    {3.7, 86, 8, false, false},         {3.4, 92, 8, false, false},
    {3.4, 78, 8, false, false},         {3.7, 90, 8, false, false, true},
    {3.4, 88, 8, false, false, true},   {3.4, 74, 7.5, false, false, true},
    {3.2, 84, 7.5, false, false, true}, {3.2, 68, 7, false, false, true},
    {4.0, 140, 9, true, true},          {4.0, 105, 9, true, true},
    {3.7, 140, 9, false, true},         {3.4, 140, 9, false, true, true},
    {3.7, 130, 9, false, true},         {3.4, 90, 8, false, true},
    {3.2, 110, 7.5, false, true, true}, {3.2, 80, 7.5, false, true, true}};

constexpr SheetStyle half_styles[] = {{3.7, 66, 7.5, false, false, true, true},
                                      {3.4, 66, 7.5, false, false, true, true},
                                      {3.4, 56, 7, false, false, true, true},
                                      {3.2, 60, 7, false, false, true, true},
                                      {3.2, 52, 6.5, false, false, true, true}};

/// How ill a style serves whatever its sheets hold: narrow tubes cannot be told apart, small type
/// cannot be read. Judged; a second sheet weighs ten.
double least_badness(const SheetStyle& style, double tube_on_paper) {
    constexpr double good_tube = 6.5, least_tube = 5, good_text = 4.4; // mm
    return 3 * std::max(0.0, good_tube - tube_on_paper) +
           6 * std::max(0.0, least_tube - tube_on_paper) + 3 * (good_text - style.text);
}

double badness(const SheetSetting& setting) {
    return 10 * (static_cast<double>(setting.sheets.size()) - 1) + (setting.tables_by_plan ? 0 : 4);
}

bool is_warning(const SetNote& note) {
    return note.text.find("DO NOT") != std::string::npos;
}

std::vector<const SetNote*> notes_for(const Drafting& drafting, const CoursePart& part,
                                      const std::vector<SetNote>& notes) {
    std::vector<const SetNote*> found;
    for (const SetNote& note : notes)
        if (note.what != "form carries" && concerns(drafting.plan, note, part.id()))
            found.push_back(&note);
    return found;
}

} // namespace

std::vector<Sheet>
best_setting(const std::function<double(const SheetStyle&)>& tube_on_paper,
             const std::function<SheetSetting(const SheetStyle&, bool draw)>& set) {
    // The most promising first: few of the others are then set at all. Of equals the first listed
    // is taken.
    struct Candidate {
        double at_least; // how ill it serves
        std::size_t place;
    };
    std::vector<Candidate> candidates;
    for (std::size_t i = 0; i < std::size(styles); ++i)
        candidates.push_back({least_badness(styles[i], tube_on_paper(styles[i])), i});
    std::stable_sort(
        candidates.begin(), candidates.end(),
        [](const Candidate& a, const Candidate& b) { return a.at_least < b.at_least; });
    std::optional<Candidate> best;
    std::size_t sheets = 1;
    const auto serves_worse = [&](double bad, std::size_t place) {
        return best && std::pair{bad, place} > std::pair{best->at_least, best->place};
    };
    for (const Candidate& candidate : candidates) {
        if (serves_worse(candidate.at_least, candidate.place))
            continue;
        const SheetSetting setting = set(styles[candidate.place], false);
        const double bad = candidate.at_least + badness(setting);
        if (serves_worse(bad, candidate.place))
            continue;
        best = Candidate{bad, candidate.place};
        sheets = setting.sheets.size();
    }
    SheetStyle style = styles[best->place];
    style.sheets = static_cast<int>(sheets);
    return set(style, true).sheets;
}

std::optional<Sheet>
half_setting(const std::function<SheetSetting(const SheetStyle&, bool draw)>& set) {
    for (const SheetStyle& style : half_styles)
        if (set(style, false).sheets.size() == 1)
            return std::move(set(style, true).sheets.front());
    return std::nullopt;
}

void add_before(Flow& flow, const Drafting& drafting, const CoursePart& part) {
    const std::vector<const SetNote*> notes = notes_for(drafting, part, part.course->before);
    if (notes.empty())
        return;
    flow.heading("Before you lay this course");
    std::vector<Flow::Item> items;
    for (const SetNote* note : notes)
        items.push_back({note->text, is_warning(*note)});
    flow.items(items, Flow::Mark::tick);
}

void add_after(Flow& flow, const Drafting& drafting, const CoursePart& part,
               const SheetStyle& style) {
    const Course& course = *part.course;
    const auto next = part_in(drafting.schedule(), course.number + 1, part.id());
    const std::string wire = course.wire_length <= 0 || !next ? ""
                             : part.rings.size() > 1
                                 ? " Wire laid, in figures of eight that link both rings."
                                 : " Wire laid.";
    std::string always = "Top checked against the rod at four places." + wire;
    if (style.half)
        always = "When it is tamped: top checked against the rod at four places." + wire;
    else
        flow.heading("When it is tamped");
    // What is filled before the top is even comes before the wire.
    std::vector<Flow::Item> items;
    const auto comes_first = [](const SetNote& note) {
        return note.what == "lintel pocket" || note.what == "lintel packing";
    };
    const std::vector<const SetNote*> after = notes_for(drafting, part, course.after);
    for (const SetNote* note : after)
        if (comes_first(*note))
            items.push_back({note->text, is_warning(*note)});
    items.push_back({always, false});
    for (const SetNote* note : after)
        if (!comes_first(*note))
            items.push_back({note->text, is_warning(*note)});
    std::string needs;
    const auto need = [&](const SetNote& note) {
        needs += (needs.empty() ? "" : ", ") + note.what + " of '" + note.element + "'";
    };
    if (next) {
        for (const SetNote* note : notes_for(drafting, *next, next->course->before))
            if (note->what != "sill") // it is shaped, nothing is brought
                need(*note);
        for (const SetNote* note : notes_for(drafting, *next, next->course->after))
            if (note->what == "anchor plates" || note->what == "curb hoop")
                need(*note);
    }
    if (!needs.empty())
        items.push_back(
            {"Have ready for course " + std::to_string(next->course->number) + ": " + needs + ".",
             false});
    flow.items(items, Flow::Mark::tick);
}

namespace {

/// Rules as lines: two columns, or one run of text where that is shorter.
struct RuleBox {
    std::vector<std::vector<std::string>> columns; // of lines
    double height = 0;
};

RuleBox rule_box(const Drafting& drafting, double width, const std::vector<std::string>& rules,
                 double size) {
    RuleBox two{{{}, {}}, 0}, one;
    std::string run;
    for (std::size_t i = 0; i < rules.size(); ++i) {
        run += (i > 0 ? " " : "") + rules[i];
        for (const std::string& line :
             wrapped(rules[i], width / 2 - 7, size, true, drafting.measure))
            two.columns[i % 2].push_back(line);
    }
    one.columns = {wrapped(run, width - 6, size, true, drafting.measure)};
    const auto height = [&](const RuleBox& box) {
        std::size_t lines = 0;
        for (const auto& column : box.columns)
            lines = std::max(lines, column.size());
        return lines_height(lines, size) + 2.5;
    };
    one.height = height(one);
    two.height = height(two);
    return one.height < two.height ? one : two;
}

} // namespace

void add_rules(Flow& flow, const Drafting& drafting, const std::vector<std::string>& rules,
               double size) {
    const RuleBox rule = rule_box(drafting, flow.width(), rules, size);
    flow.space(1.5);
    flow.block(rule.height, [&](Sheet& sheet, const PaperBox& box) {
        add_box(sheet, box, pens::heavy);
        for (std::size_t i = 0; i < rule.columns.size(); ++i)
            add_lines(sheet, {box.left + 3 + static_cast<double>(i) * box.width() / 2, box.top - 1},
                      rule.columns[i], size, true);
    });
}

void add_sign_lines(Flow& flow, const std::string& setting, const SheetStyle& style) {
    // One row rather than a sheet that holds nothing else.
    const bool dense = style.dense || flow.room() < sign_height;
    flow.at_bottom(dense ? low_sign_height : sign_height, [&](Sheet& sheet, const PaperBox& box) {
        const auto blank = [&](double x, double y, double width, const std::string& label) {
            add_text(sheet, {x, y}, label, sizes::small, true);
            const double used = flow.measure()(label, sizes::small, true).width + 1.5;
            add_line(sheet, {x + used, y - 0.6}, {x + width, y - 0.6}, pens::seen);
        };
        const double half = box.width() / 2, third = box.width() / 3;
        if (style.half) { // in short
            double x = box.left;
            for (const auto& [label, part] : {std::pair{"Height reached", 0.32},
                                              {"Set to", 0.24},
                                              {"Signed", 0.26},
                                              {"Date", 0.18}}) {
                blank(x, box.top - 5.5, part * box.width() - 2.5, label);
                x += part * box.width();
            }
            return;
        }
        if (dense) { // all in one row
            double x = box.left;
            for (const auto& [label, part] : {std::pair{"Height reached", 0.25},
                                              {"Set to", 0.18},
                                              {"Name", 0.22},
                                              {"Signed", 0.21},
                                              {"Date", 0.14}}) {
                blank(x, box.top - 7.5, part * box.width() - 2.5, label);
                x += part * box.width();
            }
            return;
        }
        const double first = box.top - 7.5, second = box.top - 17;
        blank(box.left, first, half - 4, "Height reached");
        blank(box.left + half, first, half, setting);
        blank(box.left, second, third - 4, "Name");
        blank(box.left + third, second, third - 4, "Signed");
        blank(box.left + 2 * third, second, third, "Date");
    });
}

} // namespace coilwright
