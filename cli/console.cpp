#include "cli/console.hpp"

#include "geometry/base/utf8.hpp"

#include <algorithm>
#include <ostream>

namespace coilwright {

namespace {

constexpr std::string_view start_of_line = "\r\x1b[K";

std::string_view escape_of(Colour colour) {
    switch (colour) {
    case Colour::red:
        return "\x1b[31m";
    case Colour::yellow:
        return "\x1b[33m";
    case Colour::green:
        return "\x1b[32m";
    case Colour::bold:
        return "\x1b[1m";
    }
    return {};
}

} // namespace

std::string painted(std::string_view text, Colour colour, bool on) {
    if (!on) {
        return std::string(text);
    }
    return std::string(escape_of(colour)).append(text).append("\x1b[0m");
}

std::string printable(std::string_view text) {
    std::string shown;
    shown.reserve(text.size());
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        const bool keep =
            character.code == '\n' || character.code == '\t' || is_printable(character.code);
        append_utf8(shown, keep && character.valid ? character.code : U'\uFFFD');
        at += character.bytes;
    }
    return shown;
}

std::string wrapped(std::string_view text, std::string_view indent, std::size_t width) {
    std::string lines;
    std::string line;
    std::size_t line_length = 0;
    const auto end_line = [&] {
        lines.append(indent).append(line).append("\n");
        line.clear();
        line_length = 0;
    };
    const std::size_t room = width > indent.size() ? width - indent.size() : 1;
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t end = std::min(text.find_first_of(" \n", at), text.size());
        const std::string_view word = text.substr(at, end - at);
        at = end + 1;
        if (word.empty()) {
            continue;
        }
        const std::size_t length = character_count(word);
        if (!line.empty() && line_length + 1 + length > room) {
            end_line();
        }
        if (!line.empty()) {
            line.append(" ");
            ++line_length;
        }
        line.append(word);
        line_length += length;
    }
    if (!line.empty()) {
        end_line();
    }
    return lines;
}

void print_error(Console& console, std::string_view message) {
    console.err << painted("coilwright:", Colour::red, console.colour_err) << ' '
                << printable(message) << '\n';
}

Progress::~Progress() {
    if (shown_) {
        console_.err << start_of_line << std::flush;
    }
}

void Progress::show(int done, int of, std::string_view what) {
    if (!console_.progress) {
        return;
    }
    shown_ = true;
    console_.err << start_of_line << '[' << done << '/' << of << "] " << what << std::flush;
}

} // namespace coilwright
