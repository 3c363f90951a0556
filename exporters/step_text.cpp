#include "exporters/step_text.hpp"

#include "exporters/bytes.hpp"
#include "geometry/base/utf8.hpp"

#include <cmath>

namespace coilwright {
namespace {

void append_hex(std::string& text, char32_t code, int digits) {
    for (int shift = 4 * (digits - 1); shift >= 0; shift -= 4)
        text += "0123456789ABCDEF"[code >> shift & 0xf];
}

} // namespace

StepValue step_text(std::string_view text) {
    std::string result = "'";
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        at += character.bytes;
        const char32_t code = character.code;
        if (code < 0x20 || code == 0x7f) {
            result += ' ';
        } else if (code < 0x7f) {
            if (code == '\'' || code == '\\')
                result += static_cast<char>(code);
            result += static_cast<char>(code);
        } else {
            const bool wide = code > 0xffff;
            result += wide ? "\\X4\\" : "\\X2\\";
            append_hex(result, code, wide ? 8 : 4);
            result += "\\X0\\";
        }
    }
    return result + "'";
}

StepValue step_number(double value) {
    constexpr int decimals = 6;
    std::string text;
    append_decimal(text, std::llround(value * 1e6), decimals);
    text.erase(text.find_last_not_of('0') + 1);
    return text;
}

StepValue step_word(const std::string& word) {
    return "." + word + ".";
}

StepValue step_list(const std::vector<StepValue>& values) {
    std::string text = "(";
    for (std::size_t k = 0; k < values.size(); ++k) {
        if (k > 0)
            text += ',';
        text += values[k];
    }
    return text + ")";
}

StepValue step_typed(const std::string& type, const StepValue& value) {
    return type + "(" + value + ")";
}

StepValue StepFile::add(const std::string& type, const std::vector<StepValue>& values) {
    StepValue name = "#" + std::to_string(++last_);
    lines_ += name + "=" + type + step_list(values) + ";\n";
    return name;
}

std::string StepFile::text(const std::string& description, const std::string& file_name,
                           const std::string& program, const std::string& schema) const {
    // The header wants a time; files of the same design are to be the same.
    const StepValue nobody = step_list({step_text("not given")});
    return "ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION(" + step_list({step_text(description)}) +
           ",'2;1');\nFILE_NAME(" + step_text(file_name) + ",'1980-01-01T00:00:00'," + nobody +
           "," + nobody + "," + step_text(program) + "," + step_text(program) +
           ",'not given');\nFILE_SCHEMA(" + step_list({step_text(schema)}) +
           ");\nENDSEC;\nDATA;\n" + lines_ + "ENDSEC;\nEND-ISO-10303-21;\n";
}

} // namespace coilwright
