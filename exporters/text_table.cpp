#include "exporters/text_table.hpp"

#include "geometry/base/utf8.hpp"

#include <algorithm>

namespace coilwright {

std::size_t display_width(std::string_view text) {
    std::size_t width = 0;
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        width += static_cast<std::size_t>(terminal_width(character.code));
        at += character.bytes;
    }
    return width;
}

std::string text_table(const std::vector<TextColumn>& columns,
                       const std::vector<std::vector<std::string>>& rows) {
    std::vector<std::string> headings, lines;
    std::vector<std::size_t> widths;
    for (std::size_t k = 0; k < columns.size(); ++k) {
        std::size_t width = display_width(columns[k].heading);
        for (const auto& row : rows)
            width = std::max(width, display_width(row[k]));
        headings.push_back(columns[k].heading);
        lines.push_back(std::string(width, '-'));
        widths.push_back(width);
    }
    std::string text;
    const auto add_line = [&](const std::vector<std::string>& cells) {
        std::string line;
        for (std::size_t k = 0; k < cells.size(); ++k) {
            const std::string space(widths[k] - display_width(cells[k]), ' ');
            line += k == 0 ? "" : "  ";
            line += columns[k].align == CellAlign::right ? space + cells[k] : cells[k] + space;
        }
        text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
    };
    add_line(headings);
    add_line(lines);
    for (const auto& row : rows)
        add_line(row);
    return text;
}

} // namespace coilwright
