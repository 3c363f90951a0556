// Files as bytes in memory, and writing a set of them at once.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace coilwright {

/// A file to write: a path relative to the output directory, and its bytes.
struct OutputFile {
    std::string path;
    std::string bytes;
};

/// Why nothing (or not all) was written; empty: done.
struct WriteResult {
    std::string fault;
    bool ok() const { return fault.empty(); }
};

/// Writes every file beside its place first (same directory, hidden temporary name, flushed to disk)
/// and then renames all: a failure leaves earlier files as they were and no temporary behind.
/// Creates `directory` and sub-directories where missing; refuses paths that leave it.
WriteResult write_files(const std::filesystem::path& directory,
                        const std::vector<OutputFile>& files);

} // namespace coilwright
