#include "exporters/listing_sheet.hpp"

#include <algorithm>

namespace coilwright {
namespace {

std::size_t last_entry(std::size_t entries) {
    return first_entry + std::max<std::size_t>(entries, 1) - 1;
}

} // namespace

SheetCell text_cell(const std::string& text, CellLook look) {
    return {text, {}, look};
}

WorkSheet listing_sheet(const std::string& name, const std::string& title,
                        const std::vector<ListingColumn>& columns) {
    WorkSheet sheet;
    sheet.name = name;
    sheet.frozen_rows = static_cast<int>(first_entry);
    std::vector<SheetCell> heads;
    for (const ListingColumn& column : columns) {
        sheet.widths.push_back(column.width);
        heads.push_back(text_cell(column.head, CellLook::head));
    }
    sheet.rows = {{text_cell(title, CellLook::title)}, std::move(heads)};
    return sheet;
}

std::string entries_range(const std::string& sheet, std::size_t column, std::size_t entries) {
    return sheet + "!" + cell_name(first_entry, column, true) + ":" +
           cell_name(last_entry(entries), column, true);
}

SheetCell entries_sum(std::size_t column, std::size_t entries, double value,
                      const std::string& format) {
    return {Formula{"=SUM(" + cell_name(first_entry, column) + ":" +
                        cell_name(last_entry(entries), column) + ")",
                    value},
            format, CellLook::strong};
}

} // namespace coilwright
