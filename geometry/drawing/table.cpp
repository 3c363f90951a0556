#include "geometry/drawing/table.hpp"

#include "geometry/drawing/text_layout.hpp"

#include <algorithm>
#include <numeric>

namespace coilwright {
namespace {

constexpr double gap_part = 0.9;        // between columns, in parts of the size
constexpr double head_size_part = 0.85; // headings are smaller than the figures

double head_size(double size) {
    return std::max(sizes::least, size * head_size_part);
}

std::vector<double> natural_widths(const Table& table, double size, const MeasureText& measure) {
    std::vector<double> widths;
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        double width = 0;
        for (const std::string& line : table.columns[i].head)
            width = std::max(width, measure(line, head_size(size), true).width);
        for (const auto& row : table.rows)
            width = std::max(width, measure(row[i], size, table.columns[i].bold).width);
        widths.push_back(width + gap_part * size);
    }
    return widths;
}

double sum(const std::vector<double>& numbers) {
    return std::accumulate(numbers.begin(), numbers.end(), 0.0);
}

} // namespace

Table without_spare(Table table, double width, double size, const MeasureText& measure) {
    while (sum(natural_widths(table, size, measure)) > width) {
        const auto least_needed =
            std::max_element(table.columns.begin(), table.columns.end(),
                             [](const Column& a, const Column& b) { return a.spare < b.spare; });
        if (least_needed == table.columns.end() || least_needed->spare == 0)
            break;
        const auto at = least_needed - table.columns.begin();
        table.columns.erase(least_needed);
        for (std::vector<std::string>& row : table.rows)
            row.erase(row.begin() + at);
    }
    return table;
}

TableLayout lay_out(const Table& table, double width, double wanted, double least, bool spread,
                    const MeasureText& measure, double row_part) {
    TableLayout layout;
    layout.size = wanted;
    layout.widths = natural_widths(table, wanted, measure);
    while (sum(layout.widths) > width && layout.size > least) {
        layout.size = std::max(least, layout.size - 0.1);
        layout.widths = natural_widths(table, layout.size, measure);
    }
    // Still too wide: take it from the widest columns.
    for (double over = sum(layout.widths) - width; over > 1e-9; over = sum(layout.widths) - width) {
        const auto widest = std::max_element(layout.widths.begin(), layout.widths.end());
        *widest -= std::min(over, std::max(0.5, *widest * 0.05));
    }
    if (spread) {
        const double more =
            (width - sum(layout.widths)) / static_cast<double>(layout.widths.size());
        for (double& column : layout.widths)
            column += more;
    }
    layout.width = sum(layout.widths);
    std::size_t head_lines = 0;
    for (const Column& column : table.columns)
        head_lines = std::max(head_lines, column.head.size());
    layout.head_height = lines_height(head_lines, head_size(layout.size)) + 0.5 * layout.size;
    layout.row_height = row_part * layout.size;
    return layout;
}

void add_table(Sheet& sheet, const Table& table, const TableLayout& layout, Vec2 top_left,
               std::size_t first, std::size_t count, const MeasureText& measure) {
    const double size = layout.size, small = head_size(size);
    const double right = top_left.x() + layout.width;
    const auto rule = [&](double y, const Stroke& stroke) {
        add_line(sheet, {top_left.x(), y}, {right, y}, stroke);
    };
    const auto cell = [&](std::size_t i, double y, const std::string& text, double text_size,
                          bool bold) {
        if (text.empty())
            return;
        double x = top_left.x();
        for (std::size_t k = 0; k < i; ++k)
            x += layout.widths[k];
        const double gap = gap_part * size;
        const double room = layout.widths[i] - gap;
        const Align align = table.columns[i].align;
        if (align == Align::right)
            x += layout.widths[i] - gap / 2;
        else if (align == Align::centre)
            x += layout.widths[i] / 2;
        else
            x += gap / 2;
        add_text(sheet, {x, y}, shortened(text, room + 1e-6, text_size, bold, measure), text_size,
                 bold, align);
    };
    double y = top_left.y();
    rule(y, pens::cut);
    for (std::size_t i = 0; i < table.columns.size(); ++i) {
        // Headings of fewer lines stand at the foot.
        const std::vector<std::string>& head = table.columns[i].head;
        for (std::size_t k = 0; k < head.size(); ++k)
            cell(i,
                 y - layout.head_height + 0.6 * size +
                     static_cast<double>(head.size() - 1 - k) * small * leading,
                 head[k], small, true);
    }
    y -= layout.head_height;
    rule(y, pens::seen);
    const double baseline = (layout.row_height - 0.73 * size) / 2; // capitals midway in the row
    for (std::size_t r = first; r < std::min(first + count, table.rows.size()); ++r) {
        y -= layout.row_height;
        for (std::size_t i = 0; i < table.columns.size(); ++i)
            cell(i, y + baseline, table.rows[r][i], size, table.columns[i].bold);
        rule(y, pens::fine);
    }
}

} // namespace coilwright
