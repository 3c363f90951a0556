// The order of tables and of keys in the file changes nothing.
#include "tests/design/design_dump.hpp"
#include "tests/design/whole_design.hpp"
#include "tests/support/seeded.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <sstream>

using namespace coilwright;

namespace {

struct Block {
    std::string header; // empty: the head of the file
    std::vector<std::string> lines;
};

std::vector<Block> blocks_of(const std::string& text) {
    std::vector<Block> blocks(1);
    std::istringstream stream(text);
    for (std::string line; std::getline(stream, line);) {
        if (!line.empty() && line.front() == '[')
            blocks.push_back({line, {}});
        else
            blocks.back().lines.push_back(line);
    }
    return blocks;
}

template <typename Value>
void shuffle(std::vector<Value>& values, std::size_t first, Seeded& random) {
    for (std::size_t i = values.size(); i > first + 1; --i)
        std::swap(values[i - 1], values[static_cast<std::size_t>(random.whole(
                                     static_cast<int>(first), static_cast<int>(i) - 1))]);
}

std::string shuffled(const std::string& text, Seeded& random) {
    std::vector<Block> blocks = blocks_of(text);
    shuffle(blocks, 1, random);
    std::string result;
    for (Block& block : blocks) {
        shuffle(block.lines, 0, random);
        result += block.header.empty() ? "" : block.header + "\n";
        for (const std::string& line : block.lines)
            result += line + "\n";
    }
    return result;
}

// What the diagnostics say, without where.
std::vector<std::string> said(const DesignReading& reading) {
    std::vector<std::string> all;
    for (const Diagnostic& d : reading.diagnostics)
        all.push_back(d.code + "|" + d.subject + "|" + d.message + "|" + d.allowed + "|" + d.hint);
    std::sort(all.begin(), all.end());
    return all;
}

} // namespace

TEST_CASE("a shuffled file is the same design") {
    constexpr std::uint64_t seed = 4;
    CAPTURE(seed);
    Seeded random(seed);
    const std::string whole = design_dump(read_design(whole_design).design);
    for (int i = 0; i < 100; ++i) {
        const std::string text = shuffled(whole_design, random);
        const DesignReading reading = read_design(text);
        REQUIRE(codes_of(reading) == "");
        REQUIRE(design_dump(reading.design) == whole);
    }
}

TEST_CASE("a shuffled file has the same faults") {
    constexpr std::uint64_t seed = 5;
    CAPTURE(seed);
    Seeded random(seed);
    std::string faulty = whole_design;
    faulty = replaced(faulty, "width = \"32 in\"", "widht = \"32 in\"");
    faulty = replaced(faulty, "tube = \"main\"\ndatum", "tube = \"mian\"\ndatum");
    faulty = replaced(faulty, "lay_flat = \"22 in\"", "lay_flat = \"7 in\"");
    faulty = replaced(faulty, "use = \"vent\"", "use = \"went\"");
    faulty = replaced(faulty, "bearings = [60, 240]", "bearings = 60");
    const DesignReading first = read_design(faulty);
    CHECK(first.diagnostics.size() == 5);
    const std::string dump = design_dump(first.design);
    for (int i = 0; i < 100; ++i) {
        const DesignReading reading = read_design(shuffled(faulty, random));
        REQUIRE(said(reading) == said(first));
        REQUIRE(design_dump(reading.design) == dump);
    }
}
