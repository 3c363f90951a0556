// OBJ by our own hand: the writer of Assimp 5.2 splits vertices, rounds to single precision and
// adds smoothed normals.
#include "exporters/bytes.hpp"
#include "exporters/materials.hpp"
#include "exporters/model_formats.hpp"
#include "exporters/model_tree.hpp"

#include <cmath>

namespace coilwright {
namespace {

std::string heading(const SolidModel& model) {
    return "# Coilwright " COILWRIGHT_VERSION "\n# " + comment_line(model.name) + "\n";
}

std::string material_library(const SolidModel& model) {
    std::string text = heading(model) + "# Kd: sRGB values\n";
    for (const Material material : materials_of(model)) {
        const MaterialLook& looks = look(material);
        text += "\nnewmtl " + looks.name + "\nKd";
        for (const double linear : {looks.red, looks.green, looks.blue}) {
            text += ' ';
            append_decimal(text, std::llround(srgb_encoded(linear) * 1e4), 4);
        }
        text += "\nKs 0 0 0\nd ";
        append_decimal(text, std::llround(looks.opacity * 100), 2);
        text += "\nillum 1\n";
    }
    return text;
}

} // namespace

std::vector<OutputFile> write_obj(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options) {
    const FileFrame frame = frame_of(*find_model_format("obj"), options);
    const int decimals = decimals_for(model, frame);
    const ModelTree tree = model_tree(model);
    std::string text =
        heading(model) + "# " + frame.sentence() + "\nmtllib " + stem + ".mtl\ns off\n";
    std::size_t before = 1; // vertices count through the whole file, from 1
    for (std::size_t k = 0; k < model.parts.size(); ++k) {
        const SolidPart& part = model.parts[k];
        text += "\no " + tree.parts[k] + "\ng " + tree.parts[k] + "\n";
        text += "usemtl " + look(part.material).name + "\n";
        for (const DecimalPoint& point : decimal_points(part.mesh, frame, decimals)) {
            text += "v ";
            append_point(text, point, decimals);
            text += '\n';
        }
        for (const auto& triangle : part.mesh.triangles) {
            text += 'f';
            for (const std::uint32_t corner : triangle) {
                text += ' ';
                text += std::to_string(before + corner);
            }
            text += '\n';
        }
        before += part.mesh.vertices.size();
    }
    std::vector<OutputFile> files = one_file(stem + ".obj", std::move(text));
    files.push_back({stem + ".mtl", material_library(model)});
    return files;
}

} // namespace coilwright
