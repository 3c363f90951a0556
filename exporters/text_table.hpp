// Plain tables for the terminal, aligned by the columns that a terminal gives each character.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace coilwright {

enum class CellAlign { left, right };

struct TextColumn {
    std::string heading;
    CellAlign align = CellAlign::right;
};

/// Columns that a terminal gives a text: "m²" -> 2, a combining accent 0, a wide character 2.
std::size_t display_width(std::string_view text);

/// Headings, a line, and the rows; two spaces between columns, none at a line's end.
/// Precondition: every row has as many cells as there are columns; no cell holds a line break.
std::string text_table(const std::vector<TextColumn>& columns,
                       const std::vector<std::vector<std::string>>& rows);

} // namespace coilwright
