// Solid models as files. One format, one source; this header is the table of them.
#pragma once

#include "exporters/files.hpp"
#include "geometry/solids/solid_model.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// The files of one model in one format: "shell" and GLB give shell.glb; OBJ gives shell.obj and
/// shell.mtl. Bytes are the same for the same model. Units, axes and precision of each format:
/// docs/reference/formats.md. Precondition: slugs are unique and coordinates finite. Throws
/// std::length_error where a file would pass its format's own limit (GLB 4 GiB).
using WriteModel = std::vector<OutputFile> (*)(const SolidModel& model, const std::string& stem);

struct ModelFormat {
    std::string name; // "glb"
    std::string what; // for help: "glTF 2.0 binary, metres, +Y up"
    WriteModel write;
};

std::vector<OutputFile> write_glb(const SolidModel& model, const std::string& stem);
std::vector<OutputFile> write_obj(const SolidModel& model, const std::string& stem);
std::vector<OutputFile> write_stl(const SolidModel& model, const std::string& stem);

/// Every format that this version writes.
const std::vector<ModelFormat>& model_formats();

} // namespace coilwright
