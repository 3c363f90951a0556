#include "exporters/model_formats.hpp"

namespace coilwright {

const std::vector<ModelFormat>& model_formats() {
    static const std::vector<ModelFormat> formats{
        {"glb", "glTF 2.0 binary: metre, +Y up, named parts in a tree, materials", write_glb},
        {"obj", "OBJ with MTL: metre, Z up, named parts, shared vertices, materials", write_obj},
        {"stl", "binary STL: millimetre, Z up, one mesh without names", write_stl},
    };
    return formats;
}

} // namespace coilwright
