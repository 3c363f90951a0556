// The two chunks of a GLB file, taken apart by the layout of the glTF 2.0 specification.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

namespace coilwright {

struct GlbFile {
    nlohmann::json document;
    std::string binary;
};

/// Throws std::runtime_error where the container is broken.
GlbFile take_apart_glb(const std::string& bytes);

/// What the Khronos validator says of a file: its report.
nlohmann::json khronos_report(const std::string& glb);

} // namespace coilwright
