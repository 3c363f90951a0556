#include "geometry/base/utf8.hpp"

#include <algorithm>
#include <array>

namespace coilwright {

namespace {

constexpr char32_t replacement = 0xFFFD;

struct CodeRange {
    char32_t first, last;
};

bool in_ranges(char32_t code, const CodeRange* begin, const CodeRange* end) {
    const CodeRange* range = std::lower_bound(
        begin, end, code, [](const CodeRange& r, char32_t value) { return r.last < value; });
    return range != end && range->first <= code;
}

// East Asian Wide and Fullwidth (Unicode Standard Annex 11), rounded to whole blocks.
constexpr std::array wide_ranges{
    CodeRange{0x1100, 0x115F},   CodeRange{0x2E80, 0x303E},   CodeRange{0x3041, 0x33FF},
    CodeRange{0x3400, 0x4DBF},   CodeRange{0x4E00, 0x9FFF},   CodeRange{0xA000, 0xA4CF},
    CodeRange{0xA960, 0xA97F},   CodeRange{0xAC00, 0xD7A3},   CodeRange{0xF900, 0xFAFF},
    CodeRange{0xFE30, 0xFE6F},   CodeRange{0xFF00, 0xFF60},   CodeRange{0xFFE0, 0xFFE6},
    CodeRange{0x1F300, 0x1F64F}, CodeRange{0x1F680, 0x1F6FF}, CodeRange{0x1F900, 0x1FAFF},
    CodeRange{0x20000, 0x3FFFD}};

constexpr std::array zero_width_ranges{
    CodeRange{0x0300, 0x036F}, CodeRange{0x0483, 0x0489}, CodeRange{0x0591, 0x05BD},
    CodeRange{0x064B, 0x065F}, CodeRange{0x1AB0, 0x1AFF}, CodeRange{0x1DC0, 0x1DFF},
    CodeRange{0x200B, 0x200D}, CodeRange{0x2060, 0x2060}, CodeRange{0x20D0, 0x20FF},
    CodeRange{0xFE00, 0xFE0F}, CodeRange{0xFE20, 0xFE2F}, CodeRange{0xFEFF, 0xFEFF}};

} // namespace

Utf8Character utf8_at(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[at + i]); };
    const unsigned char lead = byte(0);
    if (lead < 0x80)
        return {lead, 1, true};
    const Utf8Character broken{replacement, 1, false};
    const std::size_t count = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || text.size() - at < count)
        return broken;
    char32_t code = lead & (0x7F >> count);
    for (std::size_t i = 1; i < count; ++i) {
        if ((byte(i) & 0xC0) != 0x80)
            return broken;
        code = (code << 6) | (byte(i) & 0x3F);
    }
    const bool overlong = (count == 3 && code < 0x800) || (count == 4 && code < 0x10000);
    const bool surrogate = code >= 0xD800 && code <= 0xDFFF;
    if (overlong || surrogate || code > 0x10FFFF)
        return broken;
    return {code, count, true};
}

std::size_t first_invalid_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        if (!character.valid)
            return at;
        at += character.bytes;
    }
    return std::string_view::npos;
}

std::size_t character_count(std::string_view text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); at += utf8_at(text, at).bytes)
        ++count;
    return count;
}

void append_utf8(std::string& text, char32_t code) {
    const auto add = [&](char32_t byte) { text += static_cast<char>(byte); };
    if (code < 0x80) {
        add(code);
    } else if (code < 0x800) {
        add(0xC0 | (code >> 6));
        add(0x80 | (code & 0x3F));
    } else if (code < 0x10000) {
        add(0xE0 | (code >> 12));
        add(0x80 | ((code >> 6) & 0x3F));
        add(0x80 | (code & 0x3F));
    } else {
        add(0xF0 | (code >> 18));
        add(0x80 | ((code >> 12) & 0x3F));
        add(0x80 | ((code >> 6) & 0x3F));
        add(0x80 | (code & 0x3F));
    }
}

int terminal_width(char32_t code) {
    if (in_ranges(code, zero_width_ranges.data(),
                  zero_width_ranges.data() + zero_width_ranges.size()))
        return 0;
    return in_ranges(code, wide_ranges.data(), wide_ranges.data() + wide_ranges.size()) ? 2 : 1;
}

bool is_printable(char32_t code) {
    const bool control = code < 0x20 || (code >= 0x7F && code < 0xA0);
    const bool line_break = code == 0x2028 || code == 0x2029;
    const bool reorders = code == 0x061C || code == 0x200E || code == 0x200F ||
                          (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
    return !control && !line_break && !reorders;
}

std::string shown_text(std::string_view text, std::size_t most) {
    std::string shown;
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size();) {
        if (count++ == most)
            return shown + "...";
        const Utf8Character character = utf8_at(text, at);
        append_utf8(shown, is_printable(character.code) ? character.code : replacement);
        at += character.bytes;
    }
    return shown;
}

} // namespace coilwright
