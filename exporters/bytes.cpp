#include "exporters/bytes.hpp"

#include <bit>

namespace coilwright {

void append_u16(std::string& bytes, std::uint16_t value) {
    bytes += static_cast<char>(value & 0xff);
    bytes += static_cast<char>(value >> 8);
}

void append_u32(std::string& bytes, std::uint32_t value) {
    append_u16(bytes, static_cast<std::uint16_t>(value & 0xffff));
    append_u16(bytes, static_cast<std::uint16_t>(value >> 16));
}

void append_f32(std::string& bytes, float value) {
    append_u32(bytes, std::bit_cast<std::uint32_t>(value));
}

void append_decimal(std::string& text, std::int64_t value, int decimals) {
    std::uint64_t rest = static_cast<std::uint64_t>(value);
    if (value < 0) {
        text += '-';
        rest = 0 - rest;
    }
    char digits[24];
    char* const end = digits + sizeof digits;
    char* first = end;
    for (int count = 0; count <= decimals || rest != 0; ++count, rest /= 10) {
        if (count == decimals)
            *--first = '.';
        *--first = static_cast<char>('0' + rest % 10);
    }
    text.append(first, end);
}

std::string comment_line(const std::string& text) {
    std::string line = text;
    for (char& c : line)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f)
            c = ' ';
    return line;
}

} // namespace coilwright
