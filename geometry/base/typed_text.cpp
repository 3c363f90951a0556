#include "geometry/base/typed_text.hpp"

#include "geometry/base/utf8.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cstdint>

namespace coilwright {

namespace {

struct Spelling {
    char32_t code;
    const char* plain;
};

// In the order of their codes, for a binary search.
constexpr std::array spellings{
    Spelling{U'\t', " "},     Spelling{U'`', "'"},      Spelling{0x00A0, " "},
    Spelling{0x00B2, "2"},    Spelling{0x00B3, "3"},    Spelling{0x00B4, "'"},
    Spelling{0x00BC, " 1/4"}, Spelling{0x00BD, " 1/2"}, Spelling{0x00BE, " 3/4"},
    Spelling{0x02B9, "'"},    Spelling{0x02BA, "\""},   Spelling{0x02BC, "'"},
    Spelling{0x200B, ""},     Spelling{0x200C, ""},     Spelling{0x200D, ""},
    Spelling{0x200E, ""},     Spelling{0x200F, ""},     Spelling{0x2018, "'"},
    Spelling{0x2019, "'"},    Spelling{0x201A, "'"},    Spelling{0x201B, "'"},
    Spelling{0x201C, "\""},   Spelling{0x201D, "\""},   Spelling{0x201E, "\""},
    Spelling{0x201F, "\""},   Spelling{0x202F, " "},    Spelling{0x2032, "'"},
    Spelling{0x2033, "\""},   Spelling{0x2035, "'"},    Spelling{0x2036, "\""},
    Spelling{0x2044, "/"},    Spelling{0x205F, " "},    Spelling{0x2060, ""},
    Spelling{0x2150, " 1/7"}, Spelling{0x2151, " 1/9"}, Spelling{0x2152, " 1/10"},
    Spelling{0x2153, " 1/3"}, Spelling{0x2154, " 2/3"}, Spelling{0x2155, " 1/5"},
    Spelling{0x2156, " 2/5"}, Spelling{0x2157, " 3/5"}, Spelling{0x2158, " 4/5"},
    Spelling{0x2159, " 1/6"}, Spelling{0x215A, " 5/6"}, Spelling{0x215B, " 1/8"},
    Spelling{0x215C, " 3/8"}, Spelling{0x215D, " 5/8"}, Spelling{0x215E, " 7/8"},
    Spelling{0x2212, "-"},    Spelling{0x2215, "/"},    Spelling{0x3000, " "},
    Spelling{0x301D, "\""},   Spelling{0x301E, "\""},   Spelling{0x301F, "\""},
    Spelling{0xFE58, "-"},    Spelling{0xFE63, "-"},    Spelling{0xFEFF, ""},
    Spelling{0xFF02, "\""},   Spelling{0xFF07, "'"},    Spelling{0xFF0D, "-"}};

void append_plain(std::string& plain, char32_t code) {
    const auto found =
        std::lower_bound(spellings.begin(), spellings.end(), code,
                         [](const Spelling& s, char32_t value) { return s.code < value; });
    if (found != spellings.end() && found->code == code)
        plain += found->plain;
    else if (code >= 0x2000 && code <= 0x200A)
        plain += ' ';
    else if (code >= 0x2010 && code <= 0x2015)
        plain += '-';
    else if (code >= 0xFF10 && code <= 0xFF19)
        plain += static_cast<char>('0' + (code - 0xFF10));
    else if (code >= 'A' && code <= 'Z')
        plain += static_cast<char>(code - 'A' + 'a');
    else
        plain += code >= ' ' && code < 0x7F ? static_cast<char>(code) : '\x01';
}

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

double number_of(const std::string& digits) {
    double value = 0;
    std::from_chars(digits.data(), digits.data() + digits.size(), value, std::chars_format::fixed);
    return value;
}

} // namespace

std::string plain_typed_text(std::string_view text) {
    std::string plain;
    for (std::size_t at = 0; at < text.size();) {
        const Utf8Character character = utf8_at(text, at);
        append_plain(plain, character.code);
        at += character.bytes;
    }
    return plain;
}

void TypedScanner::skip_spaces() {
    while (peek() == ' ')
        ++at_;
}

bool TypedScanner::take(char c) {
    if (at_end() || text_[at_] != c)
        return false;
    ++at_;
    return true;
}

bool TypedScanner::take_sign() {
    if (take('-'))
        return true;
    take('+');
    return false;
}

std::string TypedScanner::take_digits() {
    std::string digits;
    while (is_digit(peek()))
        digits += text_[at_++];
    return digits;
}

// "1/2" with the scanner on its first digit; none (and nothing taken) where no fraction stands.
std::optional<TypedNumber> TypedScanner::take_fraction() {
    const std::size_t start = at_;
    const std::string above = take_digits();
    skip_spaces();
    if (above.empty() || !take('/')) {
        at_ = start;
        return std::nullopt;
    }
    skip_spaces();
    const std::string below = take_digits();
    TypedNumber fraction{0, false, {}};
    if (below.empty())
        fraction.fault = "has a fraction without its lower number";
    else if (number_of(below) == 0)
        fraction.fault = "divides by 0";
    else
        fraction.value = number_of(above) / number_of(below);
    return fraction;
}

TypedNumber TypedScanner::take_number() {
    skip_spaces();
    if (const auto fraction = take_fraction())
        return *fraction;
    TypedNumber number;
    std::string digits = take_digits();
    if (take('.')) {
        const std::string decimals = take_digits();
        if (digits.empty() && decimals.empty()) {
            number.fault = "has a point without digits";
            return number;
        }
        digits = (digits.empty() ? "0" : digits) + "." + (decimals.empty() ? "0" : decimals);
        number.whole = false;
    }
    if (digits.empty()) {
        number.fault = "has no number where one should stand";
        return number;
    }
    number.value = number_of(digits);
    if (peek() == ',' && at_ + 1 < text_.size() && is_digit(text_[at_ + 1])) {
        number.fault = "has a comma within a number (write a point)";
        return number;
    }
    // A fraction may follow a whole number, after a space or a hyphen.
    const std::size_t after = at_;
    skip_spaces();
    const bool hyphen = take('-');
    skip_spaces();
    if (hyphen || at_ > after) {
        if (const auto fraction = take_fraction()) {
            if (!fraction->fault.empty())
                return *fraction;
            if (!number.whole)
                number.fault = "has a fraction after a decimal number";
            else if (fraction->value >= 1)
                number.fault = "has a fraction of 1 or more after a whole number";
            number.value += fraction->value;
            number.whole = false;
            return number;
        }
    }
    at_ = after;
    return number;
}

std::string TypedScanner::take_word() {
    std::string word;
    while (peek() >= 'a' && peek() <= 'z')
        word += text_[at_++];
    return word;
}

std::string TypedScanner::take_rest_compact() {
    std::string rest;
    for (; !at_end(); ++at_)
        if (peek() != ' ' && peek() != '.' && peek() != '^')
            rest += text_[at_];
    return rest;
}

std::string fault_of_typed(std::string_view text) {
    constexpr std::size_t longest_text = 100;
    if (text.find_first_not_of(' ') == std::string_view::npos)
        return "is empty";
    if (text.size() > longest_text)
        return "is too long";
    return {};
}

TypedMeasure read_typed_measure(std::string_view text) {
    if (std::string fault = fault_of_typed(text); !fault.empty())
        return {0, {}, fault};
    const std::string plain = plain_typed_text(text);
    TypedScanner scanner(plain);
    scanner.skip_spaces();
    const bool negative = scanner.take_sign();
    const TypedNumber number = scanner.take_number();
    if (!number.fault.empty())
        return {0, {}, number.fault};
    return {negative ? 0 - number.value : number.value, scanner.take_rest_compact(), {}};
}

} // namespace coilwright
