// PLY, binary little-endian, in doubles: one mesh whose faces say of which part they are.
#include "exporters/bytes.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"

#include <bit>
#include <cmath>

namespace coilwright {
namespace {

void append_f64(std::string& bytes, double value) {
    const auto bits = std::bit_cast<std::uint64_t>(value);
    append_u32(bytes, static_cast<std::uint32_t>(bits & 0xffffffff));
    append_u32(bytes, static_cast<std::uint32_t>(bits >> 32));
}

std::string header(const SolidModel& model, const FileFrame& frame) {
    std::size_t vertices = 0, triangles = 0;
    std::string parts;
    const ModelTree tree = model_tree(model);
    for (std::size_t k = 0; k < model.parts.size(); ++k) {
        const SolidPart& part = model.parts[k];
        vertices += part.mesh.vertices.size();
        triangles += part.mesh.triangles.size();
        parts += "comment part " + std::to_string(k) + " " + tree.parts[k] + " " +
                 look(part.material).name + "\n";
    }
    return "ply\nformat binary_little_endian 1.0\ncomment Coilwright " COILWRIGHT_VERSION
           "\ncomment " +
           comment_line(model.name) + "\ncomment " + frame.sentence() +
           "\ncomment part NUMBER NAME MATERIAL\n" + parts + "element vertex " +
           std::to_string(vertices) +
           "\nproperty double x\nproperty double y\nproperty double z\nproperty uchar red\n"
           "property uchar green\nproperty uchar blue\nelement face " +
           std::to_string(triangles) +
           "\nproperty list uchar uint vertex_indices\nproperty uint part\nend_header\n";
}

} // namespace

std::vector<OutputFile> write_ply(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options) {
    const FileFrame frame = frame_of(*find_model_format("ply"), options);
    std::string bytes = header(model, frame);
    for (const SolidPart& part : model.parts) {
        std::string colour;
        const MaterialLook& looks = look(part.material);
        for (const double linear : {looks.red, looks.green, looks.blue})
            colour += static_cast<char>(std::lround(255 * srgb_encoded(linear)));
        for (const Vec3& vertex : part.mesh.vertices) {
            const Vec3 placed = frame.placed(vertex);
            for (int axis = 0; axis < 3; ++axis)
                append_f64(bytes, placed[axis]);
            bytes += colour;
        }
    }
    std::uint32_t before = 0;
    for (std::size_t k = 0; k < model.parts.size(); ++k) {
        for (const auto& triangle : model.parts[k].mesh.triangles) {
            bytes += '\3';
            for (const std::uint32_t corner : triangle)
                append_u32(bytes, before + corner);
            append_u32(bytes, static_cast<std::uint32_t>(k));
        }
        before += static_cast<std::uint32_t>(model.parts[k].mesh.vertices.size());
    }
    return one_file(stem + ".ply", std::move(bytes));
}

} // namespace coilwright
