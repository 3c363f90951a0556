// Quotes and spaces as phones and word processors type them, around texts and within.
#include "tests/design/design_dump.hpp"
#include "tests/design/whole_design.hpp"

#include "geometry/base/utf8.hpp"
#include "geometry/design/read_works.hpp"
#include "geometry/design/typing_slips.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t start = 0; start <= text.size();) {
        const std::size_t end = std::min(text.find('\n', start), text.size());
        lines.push_back(text.substr(start, end - start));
        start = end + 1;
    }
    return lines;
}

// The text with each line that a diagnostic names replaced by its example.
std::string mended(const std::string& text, const std::vector<Diagnostic>& diagnostics) {
    std::vector<std::string> lines = lines_of(text);
    for (const Diagnostic& d : diagnostics)
        lines.at(static_cast<std::size_t>(d.place.line) - 1) = d.example;
    std::string whole;
    for (const std::string& line : lines)
        whole += line + "\n";
    return whole;
}

std::string replaced_all(std::string text, const std::string& part, const std::string& with) {
    for (std::size_t at = 0; (at = text.find(part, at)) != std::string::npos; at += with.size())
        text.replace(at, part.size(), with);
    return text;
}

// As a phone types it: every text opened and closed by curly quotes.
std::string typed_on_a_phone(const std::string& text) {
    std::string phone;
    bool open = false;
    for (const std::string& line : lines_of(text)) {
        for (const char c : line)
            if (c == '"')
                phone += (open = !open) ? "\u201C" : "\u201D";
            else
                phone += c;
        REQUIRE_FALSE(open);
        phone += "\n";
    }
    return phone;
}

} // namespace

TEST_CASE("curly quotes around texts are told line by line, and the line that works") {
    const std::string phone = typed_on_a_phone(whole_design);
    const DesignReading reading = read_design(phone);
    std::size_t quoted = 0;
    for (const std::string& line : lines_of(whole_design))
        quoted += line.substr(0, line.find('#')).find('"') != std::string::npos ? 1 : 0;
    REQUIRE(quoted > 100);
    REQUIRE(reading.diagnostics.size() == quoted);
    for (const Diagnostic& d : reading.diagnostics) {
        CHECK(d.code == "curly-quotes");
        CHECK_THAT(d.message, Catch::Contains("quotes that are not straight (\u201C)"));
        const std::string line = lines_of(phone).at(static_cast<std::size_t>(d.place.line) - 1);
        CHECK(d.place.column ==
              static_cast<int>(character_count(line.substr(0, line.find("\u201C")))) + 1);
    }
    const DesignReading again = read_design(mended(phone, reading.diagnostics));
    CHECK(codes_of(again) == "");
    CHECK(design_dump(again.design) == design_dump(read_design(whole_design).design));
}

TEST_CASE("one line with quotes of a phone, and as it works") {
    struct Line {
        const char* typed;
        const char* code;
        int column;
        const char* works;
    };
    for (const Line& line : {
             Line{"width = \u201C8 ft\u201D", "curly-quotes", 9, "width = \"8 ft\""},
             Line{"width = \u201C8 ft\u201D   # \u201Cwide\u201D", "curly-quotes", 9,
                  "width = \"8 ft\"   # \u201Cwide\u201D"},
             Line{"width = \u20188 ft\u2019", "curly-quotes", 9, "width = \"8 ft\""},
             Line{"width = \u201E8 ft\u201C", "curly-quotes", 9, "width = \"8 ft\""},
             Line{"width = \u201D8 ft\u201D", "curly-quotes", 9, "width = \"8 ft\""},
             Line{"width = `8 ft`", "curly-quotes", 9, "width = \"8 ft\""},
             Line{"width = \u201C8\u2019 6\u201D\u201D", "curly-quotes", 9,
                  "width = \"8\u2019 6\u201D\""},
             Line{"width = \u201C8' 6\"\u201D", "curly-quotes", 9, "width = \"8' 6\\\"\""},
             Line{"width = \u201C8\u2032 6\u2033\u201D", "curly-quotes", 9,
                  "width = \"8\u2032 6\u2033\""},
             Line{"width = \"8 ft\u201D", "curly-quotes", 14, "width = \"8 ft\""},
             Line{"width = \u201C8 ft\"", "curly-quotes", 9, "width = \"8 ft\""},
             Line{"at = [\"3 ft\u201D, \"0 ft\"]", "curly-quotes", 12, "at = [\"3 ft\", \"0 ft\"]"},
             Line{"at = [\u201C3 ft\u201D, \u201C0 ft\u201D]", "curly-quotes", 7,
                  "at = [\"3 ft\", \"0 ft\"]"},
             Line{"top = { kind = \u201Cclosed\u201D }", "curly-quotes", 16,
                  "top = { kind = \"closed\" }"},
             Line{"name = \u201CAnn\u2019s \u201Cbig\u201D store\u201D", "curly-quotes", 8,
                  "name = \"Ann\u2019s \u201Cbig\u201D store\""},
             Line{"name = \u201Ca\\b\u201D", "curly-quotes", 8, "name = \"a\\\\b\""},
             Line{"\u201Cname\u201D = \u201Ca\u201D", "curly-quotes", 1, "\"name\" = \"a\""},
             Line{"width =\u00A0\"8 ft\"", "odd-space", 8, "width = \"8 ft\""},
             Line{"width\u200B = \"8 ft\"", "odd-space", 6, "width = \"8 ft\""},
             Line{"width = 32 in", "unquoted-length", 9, "width = \"32 in\""},
             Line{"width = 8\u2032 6\u2033 # wide", "unquoted-length", 9,
                  "width = \"8\u2032 6\u2033\" # wide"},
             Line{"width = 5-1/2 in", "unquoted-length", 9, "width = \"5-1/2 in\""},
             Line{"width = 8'", "unquoted-length", 9, "width = \"8'\""},
             Line{"at = [3 ft, 0]", "unquoted-length", 7, "at = [\"3 ft\", 0]"},
             Line{"width = \"8' 6\"\"", "inch-mark-ends-text", 14, "width = \"8' 6 in\""},
             Line{"width = \"8 ft", "quote-left-open", 9, "width = \"8 ft\""},
             Line{"width = '8 ft  # wide", "quote-left-open", 9, "width = \"8 ft\""},
             Line{"name = \"a\\", "quote-left-open", 8, "name = \"a\\\\\""},
             Line{"at = [\"6\"\", \"3\"\"]", "inch-mark-ends-text", 9, "at = [\"6 in\", \"3 in\"]"},
         }) {
        CAPTURE(line.typed);
        const DesignReading reading =
            read_design("# \u201Ca\u201D\n" + std::string(line.typed) + "\r\n");
        REQUIRE(codes_of(reading) == line.code);
        const Diagnostic& found = reading.diagnostics.front();
        CHECK(found.place.line == 2);
        CHECK(found.place.column == line.column);
        CHECK(found.example == line.works);
        CHECK_FALSE(found.allowed.empty());
        CHECK(typing_slips(found.example, 1).empty());
        // TOML again, whatever a design says to the keys.
        CHECK_THAT(codes_of(read_design(found.example)), !Catch::Contains(line.code));
        CHECK_THAT(codes_of(read_design(found.example)), !Catch::Contains("not-toml"));
    }
}

TEST_CASE("curly marks where they may stand are no slip") {
    // Within texts, also of several lines, and in comments: another fault is told as what it is.
    for (const char* text : {"name = \"Ann\u2019s \u201Cbig\u201D store\"\nwidth = 1 1\n",
                             "name = 'the \u201Cbig\u201D one'\nwidth = 1 1\n",
                             "name = \"\"\"\n\u201Cbig\u201D\n\"\"\"\nwidth = 1 1\n",
                             "\uFEFF# width = \u201C8 ft\u201D\nwidth = 1 1\n"}) {
        CAPTURE(text);
        CHECK(codes_of(read_design(text)) == "not-toml");
    }
    std::string text = replaced(whole_design, "width = \"32 in\"", "width = \"2\u2019 8\u201D\"");
    CHECK(codes_of(read_design(text)) == "");
    text = replaced(whole_design, "width = \"32 in\"", "width = \"2\u2032 8\u2033\"");
    CHECK(codes_of(read_design(text)) == "");
}

TEST_CASE("a works file typed on a phone is told the same") {
    const auto found = read_works("currency = \u201Cshells\u201D\n").diagnostics;
    REQUIRE(found.size() == 1);
    CHECK(found.front().code == "curly-quotes");
    CHECK(found.front().example == "currency = \"shells\"");
}

TEST_CASE("a mebibyte of curly quotes stays cheap and is told briefly") {
    std::string one_line, many_lines;
    while (one_line.size() < (1 << 20) - 8)
        one_line += "\u201C";
    CHECK(read_design(one_line).diagnostics.size() == 1);
    while (many_lines.size() < (1 << 20) - 8)
        many_lines += "\u201C\n";
    CHECK(read_design(many_lines).diagnostics.size() == most_diagnostics + 1);
    CHECK_FALSE(read_design(replaced_all(one_line, "\u201C", "1 in,\"")).diagnostics.empty());
}
