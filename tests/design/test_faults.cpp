// One small change of a sound design for every fault: its code, its place, its subject, and that
// the example it offers works.
#include "tests/design/fault_cases.hpp"
#include "tests/design/whole_design.hpp"

#include "geometry/base/utf8.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <fstream>
#include <iterator>
#include <regex>
#include <set>
#include <vector>

using namespace coilwright;

namespace {

struct Made {
    std::string text;
    SourcePlace place;
};

SourcePlace place_in(const std::string& text, std::size_t at) {
    const auto line_start = text.rfind('\n', at == 0 ? std::string::npos : at - 1);
    const std::size_t start = at == 0 || line_start == std::string::npos ? 0 : line_start + 1;
    int line = 1;
    for (std::size_t i = 0; i < start; ++i)
        line += text[i] == '\n' ? 1 : 0;
    return {line, static_cast<int>(character_count(text.substr(start, at - start))) + 1};
}

Made made(const FaultCase& a_case) {
    Made result;
    result.text = a_case.part.empty() ? whole_design + a_case.with
                                      : replaced(whole_design, a_case.part, a_case.with);
    auto at = result.text.find('^');
    if (at != std::string::npos)
        result.text.erase(at, 1);
    else
        at = result.text.find(a_case.where);
    REQUIRE(at != std::string::npos);
    result.place = place_in(result.text, at);
    return result;
}

// The text with the value that the diagnostic points at replaced by that of its example; empty
// where the example is no assignment of the key on that line.
std::string with_example(const std::string& text, const Diagnostic& diagnostic) {
    const auto equals = diagnostic.example.find(" = ");
    if (equals == std::string::npos)
        return {};
    const std::string key = diagnostic.example.substr(0, equals);
    std::size_t start = 0;
    for (int line = 1; line < diagnostic.place.line; ++line)
        start = text.find('\n', start) + 1;
    const std::size_t end = text.find('\n', start);
    const std::string line = text.substr(start, end - start);
    const std::regex value("(^|[ {,])" + key + " = (\"[^\"]*\"|\\[.*\\]|\\{.*\\}|[^,\"\\[{} ]+)");
    // The one that the diagnostic points at, where several on the line have the name.
    const std::size_t column = static_cast<std::size_t>(diagnostic.place.column) - 1;
    std::size_t from = column - std::min(column, key.size() + 4);
    std::string tail = line.substr(from);
    std::smatch match;
    if (!std::regex_search(tail, match, value)) { // it points into an array
        from = 0;
        tail = line;
        if (!std::regex_search(tail, match, value))
            return {};
    }
    const std::string mended = line.substr(0, from) + std::string(match.prefix()) + match[1].str() +
                               diagnostic.example + std::string(match.suffix());
    return text.substr(0, start) + mended + text.substr(end);
}

bool has_own_text(const FaultCase& a_case) {
    return a_case.where.empty() && a_case.with.empty();
}

} // namespace

TEST_CASE("each fault is one diagnostic with its code, place and subject") {
    for (const FaultCase& a_case : fault_cases()) {
        if (has_own_text(a_case))
            continue;
        const Made text = made(a_case);
        const DesignReading reading = read_design(text.text);
        CAPTURE(a_case.part, a_case.with);
        CHECK(codes_of(reading) == a_case.code);
        if (reading.diagnostics.size() != 1)
            continue;
        const Diagnostic& found = reading.diagnostics.front();
        CAPTURE(diagnostic_text(found, "file", text.text));
        CHECK(found.subject == a_case.subject);
        CHECK(found.place.line == text.place.line);
        CHECK(found.place.column == text.place.column);
        CHECK_FALSE(found.message.empty());
        CHECK_FALSE(found.allowed.empty());
        CHECK_FALSE(found.example.empty());
    }
}

TEST_CASE("the example that a diagnostic offers works in its place") {
    int tried = 0;
    for (const FaultCase& a_case : fault_cases()) {
        if (has_own_text(a_case))
            continue;
        const Made text = made(a_case);
        const DesignReading reading = read_design(text.text);
        if (reading.diagnostics.size() != 1)
            continue;
        const Diagnostic& found = reading.diagnostics.front();
        const std::string mended = with_example(text.text, found);
        const std::string same_key = found.subject.substr(found.subject.rfind('.') + 1) + " = ";
        // Where two keys contradict each other, one goes; nothing in its place mends it.
        if (found.code == "contradictory-keys" || found.code == "key-out-of-place")
            continue;
        if (mended.empty() || found.example.rfind(same_key, 0) != 0 || found.code == "unknown-key")
            continue;
        ++tried;
        CAPTURE(diagnostic_text(found, "file", text.text));
        CHECK(codes_of(read_design(mended)) == "");
    }
    CHECK(tried > 50);
}

TEST_CASE("faults of the file as a whole") {
    CHECK(codes_of(read_design("coilwright = 1\nname = \"a\"\nunit = \"m\"\n")) ==
          "missing-table missing-table");
    CHECK(codes_of(read_design("")) ==
          "missing-key missing-key missing-key missing-table missing-table");
    const DesignReading nameless =
        read_design(replaced(whole_design, "[sleeve.water]", "[sleeve]"));
    CHECK(codes_of(nameless) == "element-without-name");
    const DesignReading scalar =
        read_design("course = 5\n" + replaced(whole_design, "[course]", "[cours.x]"));
    CHECK(codes_of(scalar) == "wrong-type unknown-table");
    const DesignReading plaster = read_design(
        replaced(replaced(whole_design, "inside_diameter = 6", "inside_diameter = \"20 in\""),
                 "inside_plaster = \"1-1/2 in\"", "inside_plaster = \"11 in\""));
    CHECK_THAT(codes_of(plaster), Catch::Contains("plaster-fills-dome"));
}

TEST_CASE("more elements than any building has are refused once") {
    std::string text = whole_design;
    for (int i = 0; i < 300; ++i)
        text += "[sleeve.s" + std::to_string(i) +
                "]\nin = \"vault\"\nbearing = 1\nheight = 1\ndiameter = \"4 in\"\n";
    const DesignReading reading = read_design(text);
    CHECK(codes_of(reading) == "too-many-elements");
    CHECK(reading.design.sleeves.size() == 200);
}

TEST_CASE("a misspelt table of a named element is shown right with its name") {
    const DesignReading reading =
        read_design(replaced(whole_design, "[opening.door]", "[openings.door]"));
    bool told = false;
    for (const Diagnostic& found : reading.diagnostics)
        told = told || (found.code == "unknown-table" && found.example == "[opening.door]");
    CHECK(told);
}

TEST_CASE("a file full of faults names the first five hundred and says so") {
    std::string text;
    for (int i = 0; i < 20000; ++i)
        text += "key" + std::to_string(i) + " = 1\n";
    const DesignReading reading = read_design(text);
    CHECK(reading.diagnostics.size() == 501);
    CHECK(reading.diagnostics.front().code == "too-many-faults");
}

TEST_CASE("every code in the reader is provoked by a test") {
    std::set<std::string> tested{"not-toml",
                                 "too-large",
                                 "not-utf8",
                                 "nul-byte",
                                 "too-deep",
                                 "missing-table",
                                 "too-many-elements",
                                 "curly-quotes",
                                 "odd-space",
                                 "unquoted-length",
                                 "inch-mark-ends-text",
                                 "quote-left-open",
                                 "reserved-id", "taken-number"}; // of a works file, tests/takeoff
    for (const FaultCase& a_case : fault_cases())
        tested.insert(a_case.code);
    std::set<std::string> written;
    const std::regex code("\\{\\s*\"([a-z0-9-]+)\",\\s*(at\\.place|place|\\{)");
    for (const char* name : {"faults.cpp", "contradictions.cpp"}) {
        std::ifstream file(std::string(COILWRIGHT_SOURCE_DIR) + "/geometry/design/" + name);
        const std::string source{std::istreambuf_iterator<char>(file), {}};
        for (std::sregex_iterator i(source.begin(), source.end(), code), end; i != end; ++i)
            written.insert((*i)[1]);
    }
    CHECK(written.size() > 40);
    CHECK(written == tested);
}
