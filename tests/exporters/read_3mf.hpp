// A 3MF file as lib3mf, the reference reader of its consortium, reads it (strict mode).
#pragma once

#include "geometry/solids/mesh.hpp"

#include <map>
#include <string>
#include <vector>

namespace coilwright {

struct Read3mfPart {
    std::vector<std::string> path; // names from the build item down to the mesh object
    std::string material;
    bool closed = false; // lib3mf's own word: manifold and oriented
    Mesh mesh;           // coordinates as in the file
};
struct Read3mf {
    std::vector<Read3mfPart> parts; // in the order of the tree
    std::vector<std::string> warnings;
    std::map<std::string, std::string> metadata;
    double metres = 0;                               // of the file's unit
    std::map<std::string, std::vector<int>> colours; // of materials: red, green, blue, alpha
};

/// Throws std::runtime_error with lib3mf's word if it refuses the bytes.
Read3mf read_3mf(const std::string& bytes);

} // namespace coilwright
