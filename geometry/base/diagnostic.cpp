#include "geometry/base/diagnostic.hpp"

#include "geometry/base/utf8.hpp"

#include <algorithm>
#include <string_view>
#include <tuple>

namespace coilwright {

namespace {

constexpr int clipped_width = 100; // characters of a source line that are shown
constexpr int shown_before = 60;   // of them at most this many before the place

auto order_of(const Diagnostic& d) {
    return std::tie(d.place.line, d.place.column, d.code, d.subject, d.message, d.allowed,
                    d.example, d.hint);
}

std::string_view line_of(std::string_view source, int line) {
    std::size_t start = 0;
    for (int skipped = 1; skipped < line; ++skipped) {
        const std::size_t end = source.find('\n', start);
        if (end == std::string_view::npos)
            return {};
        start = end + 1;
    }
    std::string_view found = source.substr(start, source.find('\n', start) - start);
    if (!found.empty() && found.back() == '\r')
        found.remove_suffix(1);
    return found;
}

// The source line and the caret line under it. Both start at the same column of the terminal, so a
// tab in one is matched by a tab in the other.
void append_excerpt(std::string& text, std::string_view line, const SourcePlace& place) {
    std::u32string characters;
    for (std::size_t at = 0; at < line.size();) {
        const Utf8Character character = utf8_at(line, at);
        const bool shown = character.code == U'\t' || is_printable(character.code);
        characters += shown ? character.code : U'\uFFFD';
        at += character.bytes;
    }
    const int count = static_cast<int>(characters.size());
    const int target = std::clamp(place.column - 1, 0, count);
    const int first = count <= clipped_width ? 0 : std::max(0, target - shown_before);
    const int last = std::min(count, first + clipped_width);

    const std::string number = std::to_string(place.line);
    text += "\n  " + number + " | ";
    std::string pad = "\n  " + std::string(number.size(), ' ') + " | ";
    if (first > 0) {
        text += "...";
        pad += "   ";
    }
    for (int i = first; i < last; ++i) {
        const char32_t code = characters[static_cast<std::size_t>(i)];
        append_utf8(text, code);
        if (i < target)
            pad += code == U'\t' ? "\t"
                                 : std::string(static_cast<std::size_t>(terminal_width(code)), ' ');
    }
    if (last < count)
        text += "...";
    if (place.column > 0)
        text += pad + "^";
}

} // namespace

void put_in_order(std::vector<Diagnostic>& diagnostics) {
    std::sort(diagnostics.begin(), diagnostics.end(),
              [](const Diagnostic& a, const Diagnostic& b) { return order_of(a) < order_of(b); });
    const auto repeats = std::unique(
        diagnostics.begin(), diagnostics.end(),
        [](const Diagnostic& a, const Diagnostic& b) { return order_of(a) == order_of(b); });
    diagnostics.erase(repeats, diagnostics.end());
}

Diagnostic too_many_faults() {
    return {"too-many-faults",
            {},
            "",
            "The file has more than " + std::to_string(most_diagnostics) +
                " faults; the rest are not listed.",
            "a design without faults",
            "coilwright = 1",
            "is this the file you meant?"};
}

void limit(std::vector<Diagnostic>& diagnostics) {
    put_in_order(diagnostics);
    if (diagnostics.size() <= most_diagnostics)
        return;
    // The reader may have said so already; its word has no place and stands first.
    const bool told = diagnostics.front().code == too_many_faults().code;
    diagnostics.resize(most_diagnostics + (told ? 1 : 0));
    if (!told)
        diagnostics.insert(diagnostics.begin(), too_many_faults());
}

std::string diagnostic_text(const Diagnostic& diagnostic, const std::string& file_name,
                            const std::string& source) {
    constexpr std::size_t longest = 400; // characters of one sentence
    const SourcePlace& place = diagnostic.place;
    std::string text = shown_text(file_name, longest) + ":";
    if (place.line > 0) {
        text += std::to_string(place.line) + ":";
        if (place.column > 0)
            text += std::to_string(place.column) + ":";
    }
    text += " " + shown_text(diagnostic.message, longest);
    if (!diagnostic.code.empty())
        text += " [" + diagnostic.code + "]";
    if (place.line > 0)
        append_excerpt(text, line_of(source, place.line), place);
    const auto add = [&](const char* label, const std::string& what) {
        if (!what.empty())
            text += std::string("\n  ") + label + shown_text(what, longest);
    };
    add("allowed: ", diagnostic.allowed);
    add("for example: ", diagnostic.example);
    add("", diagnostic.hint);
    return text;
}

} // namespace coilwright
