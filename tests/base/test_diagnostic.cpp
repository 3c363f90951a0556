// The form FILE:LINE:COLUMN: message is that of the GNU Coding Standards, "Formatting Error
// Messages"; widths of characters are those of Unicode Standard Annex 11.
#include "geometry/base/diagnostic.hpp"

#include <catch2/catch.hpp>

using namespace coilwright;

namespace {

Diagnostic at(int line, int column) {
    return {"unknown-key",
            {line, column},
            "opening.door.widht",
            "unknown key `widht`",
            "",
            "width = \"32 in\"",
            "did you mean `width`?"};
}

} // namespace

TEST_CASE("a diagnostic shows its line with a caret, what is allowed, an example and the hint") {
    Diagnostic diagnostic = at(2, 1);
    diagnostic.allowed = "bearing, width, sill";
    CHECK(diagnostic_text(diagnostic, "store.toml", "[opening.door]\nwidht = 3\nsill = 0\n") ==
          "store.toml:2:1: unknown key `widht` [unknown-key]\n"
          "  2 | widht = 3\n"
          "    | ^\n"
          "  allowed: bearing, width, sill\n"
          "  for example: width = \"32 in\"\n"
          "  did you mean `width`?");
}

TEST_CASE("the caret stays under its place behind tabs, wide and combining characters") {
    const auto caret_line = [](const std::string& line, int column) {
        const std::string text = diagnostic_text(at(1, column), "f", line);
        const auto start = text.find('\n', text.find('\n') + 1) + 1;
        return text.substr(start, text.find('\n', start) - start);
    };
    CHECK(caret_line("\twidht = 3", 2) == "    | \t^");
    CHECK(caret_line("\u7C89 = 3", 3) == "    |    ^"); // a wide character and a space
    CHECK(caret_line("e\u0301 = 3", 4) == "    |   ^"); // e with a combining accent, a space
    CHECK(caret_line("\u00E9 = 3", 3) == "    |   ^");  // two bytes, one column
    CHECK(caret_line("ab", 9) == "    |   ^");          // at most one past the end
}

TEST_CASE("a long line is clipped around the place") {
    const std::string line = std::string(5000, 'a') + "X" + std::string(5000, 'b');
    const std::string text = diagnostic_text(at(1, 5001), "f", line);
    CHECK(text.size() < 500);
    const auto first = text.find("  1 | ");
    const auto second = text.find("    | ");
    CHECK(text[first + (text.find('^') - second)] == 'X');
}

TEST_CASE("no place, a last line without a break, and Windows line ends are all shown") {
    CHECK(diagnostic_text({"too-large", {}, "", "too large", "", "", ""}, "f", "x") ==
          "f: too large [too-large]");
    CHECK_THAT(diagnostic_text(at(2, 1), "f", "a\r\nb = 1\r\n"),
               Catch::Contains("  2 | b = 1\n    | ^\n"));
    CHECK_THAT(diagnostic_text(at(7, 1), "f", "a"), Catch::Contains("  7 | \n    | ^\n"));
}

TEST_CASE("nothing in a diagnostic can steer a terminal or reorder the text") {
    Diagnostic diagnostic = at(1, 1);
    diagnostic.message = "unknown key `\x1B[2J`";
    const std::string text = diagnostic_text(diagnostic, "f\n", "a\x1B[31m \u202E\xFF = 1");
    CHECK(text.find('\x1B') == std::string::npos);
    CHECK(text.find("\u202E") == std::string::npos);
    CHECK_THAT(text, Catch::Contains("a\uFFFD[31m \uFFFD\uFFFD = 1"));
}

TEST_CASE("diagnostics come in the order of the file, each once") {
    std::vector<Diagnostic> all{at(3, 2), at(1, 5), at(3, 2), at(1, 2)};
    Diagnostic other = at(1, 5);
    other.code = "missing-key";
    all.push_back(other);
    put_in_order(all);
    REQUIRE(all.size() == 4);
    CHECK(all[0].place.column == 2);
    CHECK(all[1].code == "missing-key");
    CHECK(all[2].code == "unknown-key");
    CHECK(all[3].place.line == 3);
}

TEST_CASE("no more faults are listed than anyone reads, and one says so") {
    std::vector<Diagnostic> many;
    for (int line = 1000; line > 0; --line) {
        Diagnostic fault;
        fault.code = "some-fault";
        fault.place = {line, 1};
        many.push_back(fault);
    }
    std::vector<Diagnostic> some(many.begin(), many.begin() + most_diagnostics);
    limit(some);
    CHECK(some.size() == most_diagnostics);
    limit(many);
    REQUIRE(many.size() == most_diagnostics + 1);
    CHECK(many.front().code == "too-many-faults");
    CHECK(many[1].place.line == 1);
    CHECK(many.back().place.line == static_cast<int>(most_diagnostics));
    limit(many); // said once
    CHECK(many.size() == most_diagnostics + 1);
}
