#include "exporters/xml.hpp"

#include "geometry/base/utf8.hpp"

namespace coilwright {
namespace {

constexpr char32_t replacement = 0xfffd;

bool is_allowed(char32_t code) {
    return code >= 0x20 && code != 0xfffe && code != 0xffff && !(code >= 0xd800 && code < 0xe000);
}

} // namespace

std::string xml_text(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        at += character.bytes;
        switch (character.code) {
        case '&':
            result += "&amp;";
            break;
        case '<':
            result += "&lt;";
            break;
        case '>':
            result += "&gt;";
            break;
        case '\t':
        case '\n':
        case '\r':
            result += ' ';
            break;
        default:
            append_utf8(result, is_allowed(character.code) ? character.code : replacement);
        }
    }
    return result;
}

} // namespace coilwright
