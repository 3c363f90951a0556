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

} // namespace coilwright
