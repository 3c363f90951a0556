// The reference pages hold what the program does: every key, no other, its range, and every code.
#include "tests/design/whole_design.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <regex>
#include <set>
#include <sstream>

using namespace coilwright;

namespace {

const std::filesystem::path source_dir = COILWRIGHT_SOURCE_DIR;

std::string file_text(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

struct Row {
    std::string key, type, range;
};

// The tables of keys in design-file.md by their headings.
std::map<std::string, std::vector<Row>> documented() {
    std::map<std::string, std::vector<Row>> tables;
    std::istringstream page(file_text(source_dir / "docs/reference/design-file.md"));
    std::string heading;
    const std::regex row(R"(\| `([a-z_]+)` \|\s*([^|]*?)\s*\|\s*([^|]*?)\s*\|\s*([^|]*?)\s*\|.*)");
    std::smatch match;
    for (std::string line; std::getline(page, line);) {
        if (line.rfind("##", 0) == 0)
            heading = line.substr(line.find(' ') + 1);
        else if (std::regex_match(line, match, row))
            tables[heading].push_back({match[1], match[2], match[4]});
    }
    return tables;
}

// Where a table with a given heading stands in the whole design: text after which a key can go.
const std::vector<std::pair<std::string, std::string>>& places() {
    static const std::vector<std::pair<std::string, std::string>> all{
        {"[course]", "[course]\n"},
        {"[tube.NAME]", "[tube.main]\n"},
        {"[dome.NAME]", "[dome.vault]\n"},
        {"profile", "profile = { "},
        {"top", "top = { "},
        {"fit", "fit = { "},
        {"[opening.NAME]", "[opening.door]\n"},
        {"head", "head = { "},
        {"lintel", "lintel = { "},
        {"[tunnel.NAME]", "[tunnel.porch]\n"},
        {"[buttress.NAME]", "[buttress.flank]\n"},
        {"[join.NAME]", "[join.bath]\n"},
        {"[sleeve.NAME]", "[sleeve.water]\n"},
        {"[context.NAME]", "[context.bed]\n"},
        {"[finish]", "[finish]\n"},
        {"[ground]", "[ground]\n"},
        {"[trench]", "[trench]\n"},
        {"[site]", "[site]\n"},
        {"[fill.NAME]", "[fill.main]\n"},
        {"[wire]", "[wire]\n"},
        {"[joint]", "[joint]\n"},
        {"[compass]", "[compass]\n"},
        {"[as_laid]", "[as_laid]\n"},
        {"[rules.USE]", "[rules.shower]\n"},
    };
    return all;
}

std::set<std::string> split(const std::string& list) {
    std::set<std::string> words;
    std::istringstream stream(list);
    for (std::string word; std::getline(stream, word, ',');)
        words.insert(word.substr(word.find_first_not_of(' ')));
    return words;
}

// The keys that a table knows, as the diagnostic of an unknown one lists them.
std::set<std::string> known_keys(const std::string& place) {
    const std::string key = place.back() == '\n' ? "zzzzzzzzzzzz = 1\n" : "zzzzzzzzzzzz = 1, ";
    const DesignReading reading = read_design(replaced(whole_design, place, place + key));
    REQUIRE(reading.diagnostics.size() == 1);
    REQUIRE(reading.diagnostics[0].code == "unknown-key");
    return split(reading.diagnostics[0].allowed);
}

std::set<std::string> keys_of(const std::vector<Row>& rows) {
    std::set<std::string> keys;
    for (const Row& row : rows)
        keys.insert(row.key);
    return keys;
}

// The whole design with a key of a table set to a value; the key's old line goes.
std::string with_value(const std::string& header, const std::string& key,
                       const std::string& typed) {
    const std::size_t start = whole_design.find(header) + header.size();
    const std::size_t end = std::min(whole_design.find("\n[", start), whole_design.size());
    std::istringstream lines(whole_design.substr(start, end - start));
    std::string kept;
    for (std::string line; std::getline(lines, line);)
        if (line.rfind(key + " = ", 0) != 0)
            kept += line + "\n";
    return whole_design.substr(0, start) + key + " = " + typed + "\n" + kept +
           whole_design.substr(end);
}

bool is_out_of_range(const std::string& text, const std::string& key) {
    const DesignReading reading = read_design(text);
    return std::any_of(reading.diagnostics.begin(), reading.diagnostics.end(),
                       [&](const Diagnostic& d) {
                           const std::string tail = "." + key;
                           return d.code == "out-of-range" && d.subject.size() > tail.size() &&
                                  d.subject.substr(d.subject.size() - tail.size()) == tail;
                       });
}

} // namespace

TEST_CASE("every key of every table stands in the reference, and no other") {
    const auto pages = documented();
    for (const auto& [heading, place] : places()) {
        CAPTURE(heading);
        REQUIRE(pages.count(heading) == 1);
        CHECK(keys_of(pages.at(heading)) == known_keys(place));
    }
    CHECK(pages.size() == places().size() + 1); // the head of the file
    const DesignReading root = read_design("zzzzzzzzzzzz = 1\n" + whole_design);
    REQUIRE(root.diagnostics.size() == 1);
    const std::string page = file_text(source_dir / "docs/reference/design-file.md");
    for (const std::string& name : split(root.diagnostics[0].allowed)) {
        CAPTURE(name);
        CHECK_THAT(page, Catch::Contains("`" + name + "`"));
    }
}

TEST_CASE("the ranges of the reference are those of the program") {
    const std::regex lengths(R"((-?[0-9.]+) (mm|m|km) to (-?[0-9.]+) (mm|m|km))");
    const std::regex numbers(R"((-?[0-9.]+) to (-?[0-9.]+))");
    const auto metres = [](const std::string& number, const std::string& unit) {
        return std::stod(number) * (unit == "mm" ? 0.001 : unit == "km" ? 1000 : 1);
    };
    int compared = 0;
    for (const auto& [key, rows] : documented()) {
        const std::string& heading = key; // lambdas take no structured binding (clang 14)
        const auto place = std::find_if(places().begin(), places().end(),
                                        [&](const auto& p) { return p.first == heading; });
        if (place == places().end() || place->second.back() != '\n')
            continue;
        for (const Row& row : rows) {
            std::smatch match;
            std::string low, high, below, above;
            if (row.type.rfind("length", 0) == 0 && std::regex_match(row.range, match, lengths)) {
                const double least = metres(match[1], match[2]), most = metres(match[3], match[4]);
                const auto typed = [](double value) {
                    return "\"" + fixed_text(value, 4) + " m\"";
                };
                low = typed(least);
                high = typed(most);
                below = typed(least - 0.001);
                above = most < 10000 ? typed(most + 0.001) : "";
            } else if ((row.type == "number" || row.type == "degrees" || row.type == "days" ||
                        row.type == "bearing") &&
                       std::regex_match(row.range, match, numbers)) {
                low = match[1];
                high = match[2];
                const bool is_whole =
                    row.key == "foundation" || row.key == "strands" || row.key == "count";
                below = fixed_text(std::stod(low) - (is_whole ? 1 : 0.001), is_whole ? 0 : 4);
                above = fixed_text(std::stod(high) + (is_whole ? 1 : 0.001), is_whole ? 0 : 4);
            } else {
                continue;
            }
            CAPTURE(heading, row.key, low, high);
            CHECK_FALSE(is_out_of_range(with_value(place->second, row.key, low), row.key));
            CHECK_FALSE(is_out_of_range(with_value(place->second, row.key, high), row.key));
            CHECK(is_out_of_range(with_value(place->second, row.key, below), row.key));
            if (!above.empty())
                CHECK(is_out_of_range(with_value(place->second, row.key, above), row.key));
            ++compared;
        }
    }
    CHECK(compared > 50);
}

TEST_CASE("every code that the program can give stands in the reference, and no other") {
    // A code is a text of small letters with a hyphen where a diagnostic or a finding is made.
    const std::regex code(R"re("([a-z]+(-[a-z0-9]+)+|headroom)")re");
    const std::set<std::string> other_words{"tiny-house"};
    std::set<std::string> given;
    std::vector<std::filesystem::path> sources{source_dir / "geometry/base/diagnostic.cpp",
                                               source_dir / "geometry/design/faults.cpp",
                                               source_dir / "geometry/design/contradictions.cpp"};
    for (const auto& entry : std::filesystem::directory_iterator(source_dir / "geometry/plan"))
        if (entry.path().extension() == ".cpp")
            sources.push_back(entry.path());
    for (const auto& entry : std::filesystem::directory_iterator(source_dir / "geometry/checks"))
        if (entry.path().extension() == ".cpp")
            sources.push_back(entry.path());
    for (const char* name : {"take_walls", "money"}) // the others there name materials
        sources.push_back(source_dir / "geometry/takeoff" / (std::string(name) + ".cpp"));
    for (const std::filesystem::path& path : sources) {
        const std::string source = file_text(path);
        REQUIRE_FALSE(source.empty());
        for (std::sregex_iterator i(source.begin(), source.end(), code), end; i != end; ++i)
            if (other_words.count((*i)[1]) == 0)
                given.insert((*i)[1]);
    }
    std::set<std::string> told;
    const std::string page = file_text(source_dir / "docs/reference/diagnostics.md");
    const std::regex row(R"(\n\| `([a-z0-9-]+)` \|)");
    for (std::sregex_iterator i(page.begin(), page.end(), row), end; i != end; ++i)
        CHECK(told.insert((*i)[1]).second);
    CHECK(given.size() > 60);
    CHECK(told == given);
}
