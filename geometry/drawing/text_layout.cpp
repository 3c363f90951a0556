#include "geometry/drawing/text_layout.hpp"

#include "geometry/drawing/pen.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {
namespace {

constexpr std::size_t longest_text = 2000; // bytes that are looked at; no line holds more

/// Bytes of the UTF-8 sign at `at`.
std::size_t sign_length(const std::string& text, std::size_t at) {
    std::size_t length = 1;
    while (at + length < text.size() &&
           (static_cast<unsigned char>(text[at + length]) & 0xC0) == 0x80)
        ++length;
    return length;
}

std::string bounded(const std::string& text) {
    if (text.size() <= longest_text)
        return text;
    std::size_t end = longest_text;
    while (end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0) == 0x80)
        --end;
    return text.substr(0, end) + "…";
}

/// How many bytes from the front fit in the width, at least one sign.
std::size_t fitting_bytes(const std::string& text, double width, double size, bool bold,
                          const MeasureText& measure) {
    std::vector<std::size_t> ends;
    for (std::size_t at = 0; at < text.size(); at += sign_length(text, at))
        ends.push_back(at + sign_length(text, at));
    std::size_t low = 1, high = ends.size();
    while (low < high) {
        const std::size_t middle = (low + high + 1) / 2;
        if (measure(text.substr(0, ends[middle - 1]), size, bold).width <= width)
            low = middle;
        else
            high = middle - 1;
    }
    return ends.empty() ? 0 : ends[low - 1];
}

std::vector<std::string> words_of(const std::string& text) {
    std::vector<std::string> words;
    std::string word;
    for (const char sign : text) {
        if (sign == ' ' || sign == '\n' || sign == '\t') {
            if (!word.empty())
                words.push_back(word);
            word.clear();
        } else {
            word += sign;
        }
    }
    if (!word.empty())
        words.push_back(word);
    return words;
}

} // namespace

std::string shortened(const std::string& text, double width, double size, bool bold,
                      const MeasureText& measure) {
    std::string kept = bounded(text);
    if (measure(kept, size, bold).width <= width)
        return kept;
    const double dots = measure("…", size, bold).width;
    kept.resize(fitting_bytes(kept, std::max(0.0, width - dots), size, bold, measure));
    while (!kept.empty() && kept.back() == ' ')
        kept.pop_back();
    return kept + "…";
}

std::vector<std::string> wrapped(const std::string& text, double width, double size, bool bold,
                                 const MeasureText& measure, std::size_t most_lines) {
    std::vector<std::string> lines;
    std::string line;
    double sum = 0; // of the line's words and the spaces between them
    const double space = measure("a a", size, bold).width - 2 * measure("a", size, bold).width;
    // Words are measured once each; their sum decides but near the margin, where signs that move
    // together across a space could.
    const auto fits = [&](const std::string& candidate, double words) {
        constexpr double doubt = 0.02;
        if (std::abs(words - width) > doubt * width)
            return words < width;
        return measure(candidate, size, bold).width <= width;
    };
    for (std::string word : words_of(bounded(text))) {
        double alone = measure(word, size, bold).width;
        const double longer = line.empty() ? alone : sum + space + alone;
        if (fits(line.empty() ? word : line + " " + word, longer)) {
            line += line.empty() ? word : " " + word;
            sum = longer;
            continue;
        }
        if (!line.empty())
            lines.push_back(line);
        while (alone > width && word.size() > 1) {
            const std::size_t bytes = fitting_bytes(word, width, size, bold, measure);
            if (bytes >= word.size())
                break;
            lines.push_back(word.substr(0, bytes));
            word.erase(0, bytes);
            alone = measure(word, size, bold).width;
        }
        line = word;
        sum = alone;
    }
    if (!line.empty() || lines.empty())
        lines.push_back(line);
    if (lines.size() > most_lines) {
        lines.resize(most_lines);
        lines.back() = shortened(lines.back() + "…", width, size, bold, measure);
    }
    return lines;
}

double fitting_size(const std::string& text, double width, double wanted, double least, bool bold,
                    const MeasureText& measure) {
    const double at_wanted = measure(text, wanted, bold).width;
    if (at_wanted <= width)
        return wanted;
    // Widths grow with the size but for rounding in the font library: leave it a hair.
    return std::max(least, wanted * width / at_wanted * 0.999);
}

double lines_height(std::size_t count, double size) {
    return static_cast<double>(count) * size * leading;
}

double add_lines(Sheet& sheet, Vec2 top_left, const std::vector<std::string>& lines, double size,
                 bool bold) {
    for (std::size_t i = 0; i < lines.size(); ++i)
        add_text(sheet,
                 {top_left.x(), top_left.y() - size - static_cast<double>(i) * size * leading},
                 lines[i], size, bold);
    return lines_height(lines.size(), size);
}

} // namespace coilwright
