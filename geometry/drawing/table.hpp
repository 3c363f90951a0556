// Tables whose columns are as wide as what stands in them.
#pragma once

#include "geometry/drawing/pen.hpp"

#include <string>
#include <vector>

namespace coilwright {

struct Column {
    std::vector<std::string> head; // lines
    Align align = Align::left;
    bool bold = false;
    int spare = 0; // over 0: goes where the table is too wide, those of higher numbers first
};

struct Table {
    std::vector<Column> columns;
    std::vector<std::vector<std::string>> rows; // as many cells as columns
};

/// A table as it will be drawn: sizes in mm.
struct TableLayout {
    double size = sizes::body;
    std::vector<double> widths; // of the columns, with their gaps
    double width = 0, head_height = 0, row_height = 0;
    double height(std::size_t rows) const {
        return head_height + static_cast<double>(rows) * row_height;
    }
};

/// The table without as many of its spare columns as make it too wide for `width` at `size`.
Table without_spare(Table table, double width, double size, const MeasureText& measure);

/// The largest size from `wanted` down to `least` at which the table is no wider than `width`; if
/// none is, its widest columns are narrowed and their cells cut short with "…". The columns are
/// then spread to the width if `spread`. Rows stand `row_part` times the size apart.
inline constexpr double usual_row_part = 1.55, dense_row_part = 1.36;
TableLayout lay_out(const Table& table, double width, double wanted, double least, bool spread,
                    const MeasureText& measure, double row_part = usual_row_part);

/// Draws the heading and rows `first` to `first + count - 1` with the top left corner given.
void add_table(Sheet& sheet, const Table& table, const TableLayout& layout, Vec2 top_left,
               std::size_t first, std::size_t count, const MeasureText& measure);

} // namespace coilwright
