#include "geometry/drawing/facts.hpp"

#include "geometry/drawing/pen.hpp"
#include "geometry/drawing/text_layout.hpp"

#include <algorithm>

namespace coilwright {
namespace {

/// A fact's row: the value on the right, its name beside it in one line or more.
struct FactRow {
    std::vector<std::string> name;
    double name_size = 0, value_size = 0, height = 0;
};

FactRow fact_row(const Fact& fact, double width, double size, const MeasureText& measure) {
    FactRow row;
    row.name_size = std::max(sizes::small, 0.88 * size);
    row.value_size =
        fitting_size(fact.value, width * 0.62, 1.12 * size, sizes::small, true, measure);
    const double value_width = measure(fact.value, row.value_size, true).width;
    row.name = wrapped(fact.name, std::max(width * 0.3, width - value_width - 2.5), row.name_size,
                       false, measure, 3);
    row.height = std::max(1.65 * size, lines_height(row.name.size(), row.name_size) + 0.5 * size);
    return row;
}

} // namespace

double facts_height(const std::vector<Fact>& facts, double width, double size,
                    const MeasureText& measure) {
    double height = 0;
    for (const Fact& fact : facts)
        height += fact_row(fact, width, size, measure).height;
    return height;
}

double add_facts(Sheet& sheet, Vec2 top_left, double width, const std::vector<Fact>& facts,
                 double size, const MeasureText& measure) {
    double y = top_left.y();
    const double right = top_left.x() + width;
    for (const Fact& fact : facts) {
        const FactRow row = fact_row(fact, width, size, measure);
        const double text_height = lines_height(row.name.size(), row.name_size);
        add_lines(sheet, {top_left.x(), y - (row.height - text_height) / 2 + 0.1}, row.name,
                  row.name_size, false);
        add_text(sheet, {right, y - row.height / 2 - 0.365 * row.value_size},
                 shortened(fact.value, width * 0.7, row.value_size, true, measure), row.value_size,
                 true, Align::right);
        y -= row.height;
        add_line(sheet, {top_left.x(), y}, {right, y}, pens::fine);
    }
    return y;
}

} // namespace coilwright
