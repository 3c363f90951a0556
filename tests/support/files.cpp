#include "tests/support/files.hpp"

#include <algorithm>
#include <filesystem>
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

std::vector<std::string> demo_files() {
    std::vector<std::string> names;
    for (const auto& file : std::filesystem::directory_iterator(COILWRIGHT_SOURCE_DIR "/models"))
        if (file.path().extension() == ".toml")
            names.push_back(file.path().filename().string());
    std::sort(names.begin(), names.end());
    return names;
}

} // namespace coilwright::testing
