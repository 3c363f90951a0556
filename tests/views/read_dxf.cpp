#include "tests/views/read_dxf.hpp"

#include "tests/exporters/scratch.hpp"

#include <sstream>

namespace coilwright::testing {

std::map<std::string, std::vector<Words>> read_dxf(const std::string& text) {
    const ScratchDirectory scratch;
    const auto file = scratch.path() / "drawing.dxf";
    put_bytes(file, text);
    std::istringstream lines(output_of(
        {"/usr/bin/python3", COILWRIGHT_SOURCE_DIR "/tests/views/read_dxf.py", file.string()}));
    std::map<std::string, std::vector<Words>> found;
    for (std::string line; std::getline(lines, line);) {
        Words words;
        std::istringstream rest(line);
        for (std::string word; std::getline(rest, word, '\t');)
            words.push_back(word);
        const std::string key = words.front();
        words.erase(words.begin());
        found[key].push_back(std::move(words));
    }
    return found;
}

} // namespace coilwright::testing
