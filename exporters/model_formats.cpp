#include "exporters/model_formats.hpp"

#include <algorithm>

namespace coilwright {

const std::vector<ModelFormat>& model_formats() {
    constexpr bool free = true, fixed = false, y_up = true, z_up = false;
    const std::string single = "IEEE single", step = "0.5 µm, decimal";
    static const std::vector<ModelFormat> formats{
        {"glb", "glTF 2.0 binary", write_glb, FileUnit::metre, fixed, y_up, fixed, "node, mesh",
         "building, dome, course, tube", "named materials", single},
        {"obj", "OBJ with MTL", write_obj, FileUnit::metre, free, z_up, free, "`o`, `g`", "none",
         "named materials", step},
        {"stl", "binary STL", write_stl, FileUnit::millimetre, free, z_up, free, "none", "none",
         "none", single, true},
        {"ply", "binary PLY", write_ply, FileUnit::metre, free, z_up, free,
         "comments; face property `part`", "none", "vertex colours", "IEEE double"},
        {"dae", "COLLADA 1.4.1", write_dae, FileUnit::metre, free, z_up, free, "node, geometry",
         "building, dome, course, tube", "named materials", step},
        {"3mf", "3MF core", write_3mf, FileUnit::millimetre, free, z_up, fixed, "object",
         "building, dome, course, tube", "named materials", step, true},
    };
    return formats;
}

const ModelFormat* find_model_format(const std::string& name) {
    const auto& formats = model_formats();
    const auto found = std::find_if(formats.begin(), formats.end(),
                                    [&](const ModelFormat& format) { return format.name == name; });
    return found == formats.end() ? nullptr : &*found;
}

FileFrame frame_of(const ModelFormat& format, const ModelOptions& options) {
    return {format.unit_is_free ? options.unit.value_or(format.unit) : format.unit,
            format.y_up || (format.up_is_free && options.y_up)};
}

} // namespace coilwright
