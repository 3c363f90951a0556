// Solid models as files. One format, one source; this header is the table of them.
#pragma once

#include "exporters/file_frame.hpp"
#include "exporters/files.hpp"
#include "geometry/solids/solid_model.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// What a person may ask of every file whose format leaves it open; the others keep their own.
struct ModelOptions {
    std::optional<FileUnit> unit;
    bool y_up = false;
};

/// The files of one model in one format: "shell" and GLB give shell.glb; OBJ gives shell.obj and
/// shell.mtl. Bytes are the same for the same model. Precondition: coordinates are finite. Throws
/// std::length_error where a file would pass its format's own limit (GLB, 3MF 4 GiB).
using WriteModel = std::vector<OutputFile> (*)(const SolidModel& model, const std::string& stem,
                                               const ModelOptions& options);

/// One row of docs/reference/formats.md; the tests hold the page to this table and the files to it.
struct ModelFormat {
    std::string name; // "glb"
    std::string what; // for help: "glTF 2.0 binary"
    WriteModel write;
    FileUnit unit = FileUnit::metre; // unless asked otherwise
    bool unit_is_free = false;       // `--unit` changes it
    bool y_up = false;               // unless asked otherwise
    bool up_is_free = false;         // `--y-up` turns it
    std::string names;               // of parts: where they stand
    std::string tree;
    std::string colours;
    std::string precision;
    bool solids_only = false; // for printers: what need not be closed (furnishings) stays out
};

std::vector<OutputFile> write_glb(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options = {});
std::vector<OutputFile> write_obj(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options = {});
std::vector<OutputFile> write_stl(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options = {});
std::vector<OutputFile> write_ply(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options = {});
std::vector<OutputFile> write_dae(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options = {});
std::vector<OutputFile> write_3mf(const SolidModel& model, const std::string& stem,
                                  const ModelOptions& options = {});

/// Every format that this version writes.
const std::vector<ModelFormat>& model_formats();
/// The format of that name, or nullptr.
const ModelFormat* find_model_format(const std::string& name);

/// The frame in which a format's files are written under these options.
FileFrame frame_of(const ModelFormat& format, const ModelOptions& options);

} // namespace coilwright
