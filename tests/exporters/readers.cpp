#include "tests/exporters/readers.hpp"

#include <array>
#include <assimp/Importer.hpp>
#include <assimp/postprocess.h>
#include <assimp/scene.h>
#include <cstring>
#include <sstream>
#include <stdexcept>

#define TINYOBJLOADER_IMPLEMENTATION
#define TINYOBJLOADER_USE_DOUBLE
#include <tiny_obj_loader.h>

namespace coilwright {
namespace {

void walk(const aiScene& scene, const aiNode& node, std::vector<std::string> path,
          const aiMatrix4x4& above, Placement placement, std::vector<ReadPart>& parts) {
    path.emplace_back(node.mName.C_Str());
    if (placement == Placement::refused && !node.mTransformation.IsIdentity())
        throw std::runtime_error("a node is turned or moved");
    const aiMatrix4x4 placed = above * node.mTransformation;
    for (unsigned k = 0; k < node.mNumMeshes; ++k) {
        const aiMesh& mesh = *scene.mMeshes[node.mMeshes[k]];
        ReadPart part;
        part.path = path;
        part.material = scene.mMaterials[mesh.mMaterialIndex]->GetName().C_Str();
        part.has_normals = mesh.HasNormals();
        for (unsigned v = 0; v < mesh.mNumVertices; ++v) {
            const aiVector3D vertex = placed * mesh.mVertices[v];
            part.mesh.vertices.emplace_back(vertex.x, vertex.y, vertex.z);
        }
        for (unsigned f = 0; f < mesh.mNumFaces; ++f) {
            const aiFace& face = mesh.mFaces[f];
            if (face.mNumIndices != 3)
                throw std::runtime_error("a face is not a triangle");
            part.mesh.triangles.push_back({face.mIndices[0], face.mIndices[1], face.mIndices[2]});
        }
        parts.push_back(std::move(part));
    }
    for (unsigned k = 0; k < node.mNumChildren; ++k)
        walk(scene, *node.mChildren[k], path, placed, placement, parts);
}

} // namespace

std::vector<ReadPart> read_by_assimp(const std::string& bytes, const std::string& extension,
                                     Placement placement) {
    Assimp::Importer importer;
    const aiScene* scene =
        importer.ReadFileFromMemory(bytes.data(), bytes.size(), 0, extension.c_str());
    if (!scene)
        throw std::runtime_error(importer.GetErrorString());
    std::vector<ReadPart> parts;
    walk(*scene, *scene->mRootNode, {}, {}, placement, parts);
    return parts;
}

ReadObj read_by_tinyobj(const std::string& obj, const std::string& mtl) {
    tinyobj::ObjReaderConfig config;
    config.triangulate = false;
    tinyobj::ObjReader reader;
    if (!reader.ParseFromString(obj, mtl, config))
        throw std::runtime_error(reader.Error());
    ReadObj read;
    read.warnings = reader.Warning() + reader.Error();
    const auto& attributes = reader.GetAttrib();
    for (const tinyobj::material_t& material : reader.GetMaterials())
        read.diffuse[material.name] = {material.diffuse[0], material.diffuse[1],
                                       material.diffuse[2]};
    for (const tinyobj::shape_t& shape : reader.GetShapes()) {
        ReadShape part;
        part.name = shape.name;
        part.normals = attributes.normals.size();
        std::map<int, std::uint32_t> place;
        std::size_t corner = 0;
        for (std::size_t f = 0; f < shape.mesh.num_face_vertices.size(); ++f) {
            if (shape.mesh.num_face_vertices[f] != 3)
                throw std::runtime_error("a face is not a triangle");
            std::array<std::uint32_t, 3> triangle{};
            for (std::uint32_t& index : triangle) {
                const int v = shape.mesh.indices[corner++].vertex_index;
                const auto [entry, is_new] =
                    place.emplace(v, static_cast<std::uint32_t>(part.mesh.vertices.size()));
                if (is_new)
                    part.mesh.vertices.emplace_back(attributes.vertices[3 * v],
                                                    attributes.vertices[3 * v + 1],
                                                    attributes.vertices[3 * v + 2]);
                index = entry->second;
            }
            part.mesh.triangles.push_back(triangle);
            part.material = reader.GetMaterials().at(shape.mesh.material_ids[f]).name;
        }
        read.shapes.push_back(std::move(part));
    }
    return read;
}

ReadStl read_stl(const std::string& bytes) {
    const auto byte = [&](std::size_t at) {
        return static_cast<std::uint32_t>(static_cast<unsigned char>(bytes.at(at)));
    };
    const auto word = [&](std::size_t at) {
        return byte(at) | byte(at + 1) << 8 | byte(at + 2) << 16 | byte(at + 3) << 24;
    };
    const auto vector = [&](std::size_t at) {
        Vec3 value;
        for (int axis = 0; axis < 3; ++axis) {
            const std::uint32_t bits = word(at + 4 * static_cast<std::size_t>(axis));
            float single = 0;
            std::memcpy(&single, &bits, sizeof single);
            value[axis] = static_cast<double>(single);
        }
        return value;
    };
    const std::size_t count = word(80);
    if (bytes.size() != 84 + 50 * count)
        throw std::runtime_error("the count of facets does not match the file's size");
    ReadStl read;
    for (std::size_t k = 0; k < count; ++k) {
        const std::size_t at = 84 + 50 * k;
        read.normals.push_back(vector(at));
        for (std::size_t corner = 0; corner < 3; ++corner)
            read.mesh.vertices.push_back(vector(at + 12 + 12 * corner));
        const auto first = static_cast<std::uint32_t>(3 * k);
        read.mesh.triangles.push_back({first, first + 1, first + 2});
    }
    return read;
}

Mesh some_triangles(const Mesh& mesh, std::size_t first, std::size_t last) {
    Mesh some{mesh.vertices, {}};
    some.triangles.assign(mesh.triangles.begin() + static_cast<std::ptrdiff_t>(first),
                          mesh.triangles.begin() + static_cast<std::ptrdiff_t>(last));
    return some;
}

Mesh welded(const Mesh& mesh) {
    Mesh joined;
    std::map<std::array<double, 3>, std::uint32_t> places;
    for (const auto& triangle : mesh.triangles) {
        std::array<std::uint32_t, 3> corners{};
        for (std::size_t c = 0; c < 3; ++c) {
            const Vec3& vertex = mesh.vertices.at(triangle[c]);
            const auto [entry, is_new] =
                places.emplace(std::array{vertex.x(), vertex.y(), vertex.z()},
                               static_cast<std::uint32_t>(joined.vertices.size()));
            if (is_new)
                joined.vertices.push_back(vertex);
            corners[c] = entry->second;
        }
        joined.triangles.push_back(corners);
    }
    return joined;
}

} // namespace coilwright
