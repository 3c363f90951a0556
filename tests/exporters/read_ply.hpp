// A reader of binary PLY written from the format's layout alone.
#pragma once

#include "geometry/solids/mesh.hpp"

#include <string>
#include <vector>

namespace coilwright {

struct ReadPly {
    std::vector<std::string> comments;
    Mesh mesh;
    std::vector<std::array<int, 3>> colours; // of each vertex
    std::vector<std::uint32_t> parts;        // of each triangle
};

/// Reads the properties that the header names, of the types that it names. Throws
/// std::runtime_error where the file and its header differ.
ReadPly read_ply(const std::string& bytes);

} // namespace coilwright
