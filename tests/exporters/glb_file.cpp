#include "tests/exporters/glb_file.hpp"

#include "tests/exporters/scratch.hpp"

#include <stdexcept>

namespace coilwright {

GlbFile take_apart_glb(const std::string& bytes) {
    const auto word = [&](std::size_t at) {
        std::uint32_t value = 0;
        for (std::size_t k = 4; k-- > 0;)
            value = value << 8 | static_cast<unsigned char>(bytes.at(at + k));
        return value;
    };
    if (bytes.substr(0, 4) != "glTF" || word(4) != 2 || word(8) != bytes.size())
        throw std::runtime_error("not a GLB file of version 2");
    const std::size_t json_size = word(12);
    if (bytes.substr(16, 4) != "JSON" || json_size % 4 != 0)
        throw std::runtime_error("no JSON chunk");
    GlbFile file{nlohmann::json::parse(bytes.substr(20, json_size)), {}};
    const std::size_t next = 20 + json_size;
    if (next < bytes.size()) {
        if (bytes.substr(next + 4, 4) != std::string("BIN\0", 4))
            throw std::runtime_error("no binary chunk");
        file.binary = bytes.substr(next + 8);
        if (file.binary.size() != word(next))
            throw std::runtime_error("the binary chunk's size is wrong");
    }
    return file;
}

nlohmann::json khronos_report(const std::string& glb) {
    const ScratchDirectory scratch;
    const auto file = scratch.path() / "model.glb";
    put_bytes(file, glb);
    return nlohmann::json::parse(
        output_of({"node", COILWRIGHT_NODE_DIRECTORY "/validate_glb.js", file.string()}))[0];
}

} // namespace coilwright
