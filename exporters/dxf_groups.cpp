#include "exporters/dxf_groups.hpp"

#include "geometry/base/length.hpp"
#include "geometry/base/utf8.hpp"

#include <cmath>
#include <stdexcept>

namespace coilwright {

std::string dxf_group(int code, const std::string& value) {
    const std::string number = std::to_string(code);
    return std::string(number.size() < 3 ? 3 - number.size() : 0, ' ') + number + "\n" + value +
           "\n";
}

std::string dxf_group(int code, int value) {
    return dxf_group(code, std::to_string(value));
}

std::string dxf_real(int code, double value, int decimals) {
    if (!std::isfinite(value))
        throw std::runtime_error("A drawing holds a number that is not finite.");
    std::string text = fixed_text(value, decimals);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.')
        text += '0';
    return dxf_group(code, text);
}

std::string dxf_point(int code, Vec2 point) {
    return dxf_real(code, point.x()) + dxf_real(code + 10, point.y()) + dxf_real(code + 20, 0);
}

std::string dxf_text(const std::string& text) {
    static const char* const digits = "0123456789ABCDEF";
    std::string safe;
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character one = utf8_at(text, at);
        at += one.bytes;
        if (one.code == '^') {
            safe += "^ ";
        } else if (one.code == '%' && (at < text.size() ? text[at] == '%' : false)) {
            safe += "\\U+0025"; // a pair of them would start a code
        } else if (one.code < 0x20 || one.code == 0x7f) {
            safe += ' ';
        } else if (one.code < 0x7f) {
            safe += static_cast<char>(one.code);
        } else {
            const unsigned code = one.code > 0xffff ? 0xfffd : static_cast<unsigned>(one.code);
            safe += "\\U+";
            for (int shift = 12; shift >= 0; shift -= 4)
                safe += digits[(code >> shift) & 15];
        }
    }
    return safe;
}

} // namespace coilwright
