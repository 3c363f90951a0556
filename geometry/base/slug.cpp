#include "geometry/base/slug.hpp"

#include "geometry/base/utf8.hpp"

namespace coilwright {

namespace {

constexpr std::size_t longest_slug = 31;

bool is_letter(char c) {
    return c >= 'A' && c <= 'Z';
}

// Upper-case letters, digits and '_', one for each character; nothing clipped yet.
std::string slug_characters(std::string_view text) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        const char c = character.bytes == 1 ? text[at] : '_';
        if (c >= 'a' && c <= 'z')
            result += static_cast<char>(c - 'a' + 'A');
        else
            result += is_letter(c) || (c >= '0' && c <= '9') ? c : '_';
        at += character.bytes;
    }
    return result;
}

// With a letter in front, as every format wants it.
std::string led_by_letter(std::string text) {
    return text.empty() || !is_letter(text.front()) ? "X" + text : text;
}

// The head of `text` that leaves room for `tail` within a slug's length, and the tail.
std::string joined_within(const std::string& text, const std::string& tail) {
    const std::string kept_tail = tail.substr(0, longest_slug - 1);
    return text.substr(0, longest_slug - kept_tail.size()) + kept_tail;
}

} // namespace

std::string slug(std::string_view text) {
    return joined_within(led_by_letter(slug_characters(text)), "");
}

std::string course_slug(std::string_view element, int course, std::string_view part) {
    const std::string digits = std::to_string(course);
    const std::string number = digits.size() < 2 ? "0" + digits : digits;
    const std::string tail = "_C" + number + "_" + slug_characters(part);
    return joined_within(led_by_letter(slug_characters(element)), tail);
}

std::string SlugTable::unique(std::string_view wanted) {
    std::string first = slug(wanted);
    const auto [place, is_new] = used_.try_emplace(first, 1);
    if (is_new)
        return first;
    int& repeats = place->second;
    for (;;) {
        ++repeats;
        const std::string number = std::to_string(repeats);
        std::string other = joined_within(first, std::string("_").append(number));
        if (used_.try_emplace(other, 1).second)
            return other;
    }
}

} // namespace coilwright
