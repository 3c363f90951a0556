// Bars to compare amounts by eye, and stages of work on a calendar.
#pragma once

#include "geometry/drawing/page.hpp"
#include "geometry/takeoff/days.hpp"

#include <string>
#include <vector>

namespace coilwright {

struct Bar {
    std::string name;
    double value = 0;
    std::string text;         // what it says at its end
    double low = 0, high = 0; // a line from one to the other over it; none where both are 0
};

/// Height of so many bars with text of a size, mm.
double bars_height(std::size_t count, double size);
/// Bars from the top of a box, the longest as long as the box allows; 0 is at their left.
void add_bars(Sheet& sheet, const PaperBox& box, const std::vector<Bar>& bars, double size,
              const MeasureText& measure);

/// Height of a chart of the stages of a plan.
double stages_height(const DayPlan& days, double size);
/// The stages of a day plan, one a row, on a calendar with a line every week or every four, with
/// dates where a start is given.
void add_stages(Sheet& sheet, const PaperBox& box, const DayPlan& days, double size,
                const MeasureText& measure);

} // namespace coilwright
