// Model files read back by code that shares nothing with the writers: Assimp, tinyobjloader, and a
// reader of binary STL written from the format's layout alone.
#pragma once

#include "geometry/solids/mesh.hpp"

#include <map>
#include <string>
#include <vector>

namespace coilwright {

/// One node with a mesh, as Assimp found it. Coordinates as in the file.
struct ReadPart {
    std::vector<std::string> path; // names from the root down to the node
    std::string material;
    bool has_normals = false;
    Mesh mesh;
};

/// What a reading does with nodes that are turned, moved or scaled.
enum class Placement { refused, applied };

/// Every node with a mesh, in the order of the tree. `extension` is "glb", "obj", "stl", "ply" or
/// "dae". With Placement::applied coordinates are in the frame of the scene, for DAE metres and +Y
/// up. Throws std::runtime_error with Assimp's word if it refuses the bytes.
std::vector<ReadPart> read_by_assimp(const std::string& bytes, const std::string& extension,
                                     Placement placement = Placement::refused);

/// One shape as tinyobjloader (in doubles) found it; vertices are those its faces use.
struct ReadShape {
    std::string name;
    std::string material;
    std::size_t normals = 0;
    Mesh mesh;
};
struct ReadObj {
    std::vector<ReadShape> shapes;
    std::string warnings;
    std::map<std::string, std::vector<double>> diffuse; // by material
};
ReadObj read_by_tinyobj(const std::string& obj, const std::string& mtl);

/// Facets of a binary STL file in its order, corners not shared: vertex 3 k + c is corner c of
/// facet k. `normals` as in the file. Throws std::runtime_error where the layout is broken.
struct ReadStl {
    Mesh mesh;
    std::vector<Vec3> normals;
};
ReadStl read_stl(const std::string& bytes);

/// The mesh with equal vertices made one, and without vertices that no triangle uses.
Mesh welded(const Mesh& mesh);

/// The triangles [first, last) of a mesh as a mesh of its own.
Mesh some_triangles(const Mesh& mesh, std::size_t first, std::size_t last);

} // namespace coilwright
