// Reading UTF-8 one character at a time, for texts that people typed.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace coilwright {

/// One character of a text. Bytes that are not UTF-8 (overlong forms, surrogates, beyond U+10FFFF
/// and cut sequences too) come one byte at a time, as U+FFFD with `valid` false.
struct Utf8Character {
    char32_t code = 0;
    std::size_t bytes = 1;
    bool valid = true;
};

/// The character that starts at a byte. Precondition: at < text.size().
Utf8Character utf8_at(std::string_view text, std::size_t at);
/// Byte at which the text stops being UTF-8; npos where all of it is.
std::size_t first_invalid_utf8(std::string_view text);
/// Characters in a text: "5½" -> 2.
std::size_t character_count(std::string_view text);
void append_utf8(std::string& text, char32_t code);

/// Columns that a terminal gives a character: 0 (combining marks), 1 or 2 (East Asian wide, emoji).
int terminal_width(char32_t code);
/// Whether a character can be shown to a person as it is: no control, no line break, no mark that
/// reorders text. A tab is not.
bool is_printable(char32_t code);
/// The text on one line, at most `most` characters: what is not printable becomes U+FFFD, what is
/// clipped ends in "...".
std::string shown_text(std::string_view text, std::size_t most = 60);

} // namespace coilwright
