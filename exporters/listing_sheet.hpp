// Sheets that list: a title, the heads of the columns, entries, sums at the foot.
#pragma once

#include "exporters/spreadsheet.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Row of the first entry, from 0.
inline constexpr std::size_t first_entry = 2;

SheetCell text_cell(const std::string& text, CellLook look = CellLook::plain);

struct ListingColumn {
    std::string head;
    double width = 10; // characters
};

/// The sheet with its title and heads, which stay in view. It must have a column.
WorkSheet listing_sheet(const std::string& name, const std::string& title,
                        const std::vector<ListingColumn>& columns);

/// "SHEET!$F$3:$F$90": a column's entries (one, empty, where there are none).
std::string entries_range(const std::string& sheet, std::size_t column, std::size_t entries);

/// The sum of a column's entries, for the row under them; `value` is what it comes to.
SheetCell entries_sum(std::size_t column, std::size_t entries, double value,
                      const std::string& format);

} // namespace coilwright
