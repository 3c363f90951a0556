#include "tests/support/files.hpp"

#include <fstream>
#include <iterator>
#include <stdexcept>

namespace coilwright::testing {

std::string whole_building_text(const std::string& name) {
    const std::string path = std::string(COILWRIGHT_SOURCE_DIR) + "/models/" + name + ".toml";
    std::ifstream file(path, std::ios::binary);
    std::string text{std::istreambuf_iterator<char>(file), {}};
    if (text.empty())
        throw std::runtime_error("cannot read " + path);
    return text;
}

} // namespace coilwright::testing
