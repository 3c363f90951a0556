#include "exporters/csv.hpp"

namespace coilwright {

std::string csv_field(const std::string& text) {
    std::string safe = text;
    if (!safe.empty() && std::string("=+-@\t\r").find(safe.front()) != std::string::npos)
        safe.insert(safe.begin(), '\'');
    if (safe.find_first_of(",\"\r\n") == std::string::npos)
        return safe;
    std::string quoted = "\"";
    for (const char c : safe) {
        quoted += c;
        if (c == '"')
            quoted += '"';
    }
    return quoted + "\"";
}

std::string csv_row(const std::vector<std::string>& cells) {
    std::string row;
    for (std::size_t i = 0; i < cells.size(); ++i)
        row += (i > 0 ? "," : "") + csv_field(cells[i]);
    return row + "\r\n";
}

} // namespace coilwright
