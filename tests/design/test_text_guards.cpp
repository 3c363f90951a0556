// Text that is no design at all: refused with one diagnostic, quickly.
#include "tests/design/whole_design.hpp"

#include <catch2/catch.hpp>

#include <chrono>

using namespace coilwright;

namespace {

constexpr std::size_t mebibyte = 1 << 20;

std::string repeated(const std::string& part, std::size_t bytes) {
    std::string text;
    while (text.size() + part.size() <= bytes)
        text += part;
    return text;
}

} // namespace

TEST_CASE("text that is not TOML gives the one diagnostic") {
    struct Broken {
        const char* text;
        int line, column;
    };
    // Columns count characters: the broken value stands after two wide ones.
    for (const Broken& broken :
         {Broken{"width = 32 yards", 1, 12}, Broken{"a = 1\na = 2\n", 2, 5},
          Broken{"[course\nheight = 1", 1, 8}, Broken{"x = \"日本\" 5\n", 1, 10}}) {
        const DesignReading reading = read_design(broken.text);
        CAPTURE(broken.text);
        REQUIRE(codes_of(reading) == "not-toml");
        CHECK(reading.diagnostics[0].place.line == broken.line);
        CHECK(reading.diagnostics[0].place.column == broken.column);
        CHECK_FALSE(reading.diagnostics[0].example.empty());
    }
}

TEST_CASE("bytes that no text has are refused with their place") {
    const DesignReading nul = read_design(std::string_view("a = 1\nb\0c", 9));
    REQUIRE(codes_of(nul) == "nul-byte");
    CHECK(nul.diagnostics[0].place.line == 2);
    CHECK(nul.diagnostics[0].place.column == 2);
    const DesignReading latin = read_design("name = \"Caf\xE9\"\n");
    REQUIRE(codes_of(latin) == "not-utf8");
    CHECK(latin.diagnostics[0].place.line == 1);
    CHECK(latin.diagnostics[0].place.column == 12);
    CHECK(codes_of(read_design(std::string(mebibyte + 1, '#'))) == "too-large");
    CHECK(codes_of(read_design("\xFF\xFEn\0a\0")) == "not-utf8");
}

TEST_CASE("nesting over 16 levels is refused before it is parsed") {
    const auto nested = [](int levels) {
        const auto count = static_cast<std::size_t>(levels);
        return "a = " + std::string(count, '[') + std::string(count, ']') + "\n";
    };
    CHECK_THAT(codes_of(read_design(nested(16))), Catch::Contains("unknown-table"));
    CHECK(codes_of(read_design(nested(17))) == "too-deep");
    CHECK(read_design(nested(17)).diagnostics[0].place.column == 21);
    CHECK(codes_of(read_design(repeated("[a.b]\nx={y=1}\n", 200) + "[" + repeated("a.", 60) +
                               "b]")) == "too-deep");
    // Brackets and dots in strings and comments do not count.
    const std::string text = "a = \"" + std::string(99, '[') + "\" # " + std::string(99, '.') +
                             "\nb = '''\n" + std::string(99, '{') + "'''\nc = \"\\\"" +
                             std::string(99, '[') + "\"\n";
    CHECK_THAT(codes_of(read_design(text)), Catch::Contains("unknown-table"));
}

TEST_CASE("hostile text is refused in short time") {
    const std::vector<std::string> texts{
        repeated("[", mebibyte),
        repeated("a.", mebibyte),
        "a = " + repeated("[", mebibyte - 4),
        "a = " + repeated("{a=", mebibyte - 4),
        "name = \"" + repeated("x", mebibyte - 20) + "\"\n",
        repeated("k", mebibyte - 10) + " = 1\n",
        "bearings = [" + repeated("1,", mebibyte - 20) + "]\n",
        repeated("\"\"\"", mebibyte),
        [] {
            std::string keys = whole_design + "[finish.more]\n";
            for (int i = 0; keys.size() < mebibyte - 20; ++i)
                keys += "plaster" + std::to_string(i) + "=1\n";
            return keys;
        }(),
        [] {
            std::string tables = "[course]\n";
            for (int i = 0; tables.size() < mebibyte - 20; ++i)
                tables += "[dome.d" + std::to_string(i) + "]\n";
            return tables;
        }(),
    };
    for (const std::string& text : texts) {
        CAPTURE(text.substr(0, 20));
        REQUIRE(text.size() <= mebibyte);
        const auto start = std::chrono::steady_clock::now();
        const DesignReading reading = read_design(text);
        const std::chrono::duration<double> time = std::chrono::steady_clock::now() - start;
        CHECK_FALSE(reading.diagnostics.empty());
        CHECK(reading.diagnostics.size() <= 501);
        CHECK(time.count() <
              5); // measured well under 1 s; a loaded machine under a sanitizer is slow
    }
}
