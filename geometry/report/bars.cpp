#include "geometry/report/bars.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr Ink bar_ink{0.55};
constexpr double row_part = 1.6; // height of a row in parts of the text's size

double widest(const std::vector<std::string>& texts, double size, bool bold,
              const MeasureText& measure) {
    double width = 0;
    for (const std::string& text : texts)
        width = std::max(width, measure(text, size, bold).width);
    return width;
}

} // namespace

double bars_height(std::size_t count, double size) {
    return static_cast<double>(count) * row_part * size;
}

void add_bars(Sheet& sheet, const PaperBox& box, const std::vector<Bar>& bars, double size,
              const MeasureText& measure) {
    std::vector<std::string> names, texts;
    double most = 0;
    for (const Bar& bar : bars) {
        names.push_back(bar.name);
        texts.push_back(bar.text);
        most = std::max({most, bar.value, bar.high});
    }
    const double gap = 2;
    const double name_width =
        std::min(widest(names, size, false, measure), 0.4 * box.width()) + gap;
    const double text_width = widest(texts, size, true, measure) + gap;
    const double left = box.left + name_width, room = box.width() - name_width - text_width;
    const double row = row_part * size;
    double y = box.top;
    for (const Bar& bar : bars) {
        y -= row;
        const double base = y + (row - 0.73 * size) / 2;
        const double name_size =
            fitting_size(bar.name, name_width - gap, size, sizes::least, false, measure);
        add_text(sheet, {box.left, base},
                 shortened(bar.name, name_width - gap, name_size, false, measure), name_size);
        const auto at = [&](double value) { return left + (most > 0 ? value / most : 0) * room; };
        if (at(bar.value) - left > 0.05)
            add_fill(sheet, {left, y + 0.18 * row, at(bar.value), y + 0.82 * row}, bar_ink);
        if (bar.high > bar.low) {
            const double middle = y + row / 2;
            add_line(sheet, {at(bar.low), middle}, {at(bar.high), middle}, pens::seen);
            for (const double end : {bar.low, bar.high})
                add_line(sheet, {at(end), middle - 0.14 * row}, {at(end), middle + 0.14 * row},
                         pens::seen);
        }
        add_text(sheet, {box.right, base}, bar.text, size, true, Align::right);
    }
    add_line(sheet, {left, box.top}, {left, y}, pens::seen);
}

double stages_height(const DayPlan& days, double size) {
    return (static_cast<double>(days.stages.size()) + 1) * row_part * size;
}

void add_stages(Sheet& sheet, const PaperBox& box, const DayPlan& days, double size,
                const MeasureText& measure) {
    const double row = row_part * size, gap = 2;
    std::vector<std::string> names, texts;
    for (const StageBar& bar : days.stages) {
        names.push_back(bar.name);
        texts.push_back(fixed_text(bar.person_days, 1));
    }
    const std::string over_texts = "person-days";
    texts.push_back(over_texts);
    const double left =
        box.left + std::min(widest(names, size, false, measure), 0.35 * box.width()) + gap;
    const double right = box.right - widest(texts, size, true, measure) - gap;
    const int all = std::max(1, days.calendar_days);
    const auto at = [&](int day) { return left + (right - left) * day / all; };
    // Lines as close as their words allow.
    const bool dated = !days.days.empty() && days.days.front().date.has_value();
    const auto label = [&](int day) {
        return dated ? date_text(
                           days_after(*days.days.front().date, day - days.days.front().calendar))
                     : "day " + std::to_string(day + 1);
    };
    int step = 7;
    while (at(step) - left < measure(label(all), size, false).width + gap)
        step *= 2;
    const double bottom = box.top - row * (static_cast<double>(days.stages.size()) + 1);
    for (int day = 0; day < all; day += step) {
        add_line(sheet, {at(day), box.top - row}, {at(day), bottom}, pens::fine);
        const std::string text = label(day);
        if (at(day) + measure(text, size, false).width < right)
            add_text(sheet, {at(day), box.top - row + 0.45 * size}, text, size);
    }
    add_text(sheet, {box.right, box.top - row + 0.45 * size}, over_texts, size, false,
             Align::right);
    double y = box.top - row;
    add_line(sheet, {box.left, y}, {box.right, y}, pens::seen);
    for (const StageBar& bar : days.stages) {
        y -= row;
        const double base = y + (row - 0.73 * size) / 2;
        add_text(sheet, {box.left, base},
                 shortened(bar.name, left - box.left - gap, size, false, measure), size);
        add_fill(sheet, {at(bar.from), y + 0.2 * row, at(bar.to + 1), y + 0.8 * row}, bar_ink);
        add_text(sheet, {box.right, base}, fixed_text(bar.person_days, 1), size, true,
                 Align::right);
    }
    add_line(sheet, {box.left, y}, {box.right, y}, pens::seen);
}

} // namespace coilwright
