// Well-formed and ill-formed sequences: table 3-7 of the Unicode standard.
#include "geometry/base/utf8.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

TEST_CASE("UTF-8 is told from bytes that are not") {
    for (const char* good : {"", "plain", "\u00BD", "\u7C89", "\U0001F600", "\uFFFD"}) {
        CAPTURE(good);
        CHECK(first_invalid_utf8(good) == std::string_view::npos);
    }
    CHECK(first_invalid_utf8("a\x80") == 1);            // a lone continuation
    CHECK(first_invalid_utf8("ab\xC3") == 2);           // cut off
    CHECK(first_invalid_utf8("\xC0\xAF") == 0);         // overlong
    CHECK(first_invalid_utf8("\xE0\x80\xAF") == 0);     // overlong
    CHECK(first_invalid_utf8("\xED\xA0\x80") == 0);     // a surrogate
    CHECK(first_invalid_utf8("\xF4\x90\x80\x80") == 0); // beyond U+10FFFF
    CHECK(first_invalid_utf8("\xF0\x80\x80\x80") == 0); // overlong
    CHECK(first_invalid_utf8("\xE7\x41\x41") == 0);     // continuation missing
}

TEST_CASE("characters are counted and written back") {
    CHECK(character_count("5\u00BD in") == 5);
    CHECK(character_count("\xFF\xFE") == 2);
    for (char32_t code : {U'a', U'\u00BD', U'\u7C89', U'\U0001F600'}) {
        std::string text;
        append_utf8(text, code);
        CHECK(utf8_at(text, 0).code == code);
        CHECK(utf8_at(text, 0).bytes == text.size());
    }
}

TEST_CASE("what is shown to a person is one clipped printable line") {
    CHECK(shown_text("a\nb\x1B") == "a\uFFFDb\uFFFD");
    CHECK(shown_text("abcdef", 3) == "abc...");
    CHECK(shown_text("abc", 3) == "abc");
    // Marks that reorder text (Unicode Standard Annex 9) and line breaks are not shown; letters
    // that are written from right to left are.
    for (const char32_t code :
         {0x061C, 0x200E, 0x200F, 0x202A, 0x202B, 0x202C, 0x202D, 0x202E, 0x2066, 0x2067, 0x2068,
          0x2069, 0x2028, 0x2029, 0x0085, 0x009F, 0x007F}) {
        CAPTURE(static_cast<unsigned>(code));
        CHECK_FALSE(is_printable(code));
    }
    for (const char32_t code : {U' ', U'~', U'\u00A0', U'\u05D0', U'\u2065', U'\u206A'}) {
        CAPTURE(static_cast<unsigned>(code));
        CHECK(is_printable(code));
    }
    CHECK(terminal_width(U'a') == 1);
    CHECK(terminal_width(U'\u7C89') == 2);
    CHECK(terminal_width(U'\u0301') == 0);
}
