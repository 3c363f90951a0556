// What all sheets of a course share: notes with boxes to tick, rules, lines to sign, and how the
// sheets are set as large as their number allows.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/page.hpp"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// How generously a sheet is set.
struct SheetStyle {
    double text;        // mm
    double plan_most;   // mm, height of the box that holds the plan
    double plan_rim;    // mm around what is drawn, for names and letters
    bool headings;      // over the tables of cuts
    bool wide;          // the plan across the sheet, figures under it
    bool dense = false; // rows of tables close together, lines to sign in one row less
    bool half = false;  // half a sheet, which two parts of a course share
    int sheets = 1;     // that a part takes in this style, told in their heads
    double row_part() const { return dense ? dense_row_part : usual_row_part; }
};

/// Sheets in a style, and how well they serve.
struct SheetSetting {
    std::vector<Sheet> sheets;
    bool tables_by_plan = true; // the cuts on the sheet that shows their letters
};

/// The best of all styles: few sheets, plans that can be read, cuts beside their letters, large
/// type. `tube_on_paper` says how wide a tube is in a style's plan, mm; `set` is called with `draw`
/// false to try a style, and once more to draw.
std::vector<Sheet>
best_setting(const std::function<double(const SheetStyle&)>& tube_on_paper,
             const std::function<SheetSetting(const SheetStyle&, bool draw)>& set);

/// The same on half a sheet; none where it does not fit there.
std::optional<Sheet>
half_setting(const std::function<SheetSetting(const SheetStyle&, bool draw)>& set);

/// What to do before the course is laid.
void add_before(Flow& flow, const Drafting& drafting, const CoursePart& part);
/// What to do when the course is tamped: level, wire, what the design sets, what the next one
/// needs.
void add_after(Flow& flow, const Drafting& drafting, const CoursePart& part,
               const SheetStyle& style);
/// Rules in a frame: two columns, or one run of text where that is shorter.
void add_rules(Flow& flow, const Drafting& drafting, const std::vector<std::string>& rules,
               double size);
/// Height reached, setting used, name, signature, date, at the foot of the sheet.
void add_sign_lines(Flow& flow, const std::string& setting, const SheetStyle& style);

} // namespace coilwright
