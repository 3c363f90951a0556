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

/// A list of one; its bytes, often many millions, are moved and not copied.
std::vector<OutputFile> one_file(std::string path, std::string bytes);

/// Why nothing (or not all) was written; empty: done.
struct WriteResult {
    std::string fault;
    bool ok() const { return fault.empty(); }
};

/// Writes every file beside its place first (same directory, hidden temporary name, flushed to
/// disk) and then renames all: a failure leaves earlier files as they were, no temporary and no
/// directory made on the way. SIGINT, SIGTERM and SIGHUP wait meanwhile; one that comes before the
/// renames makes it such a failure, and acts once all is taken back. Creates `directory` (empty:
/// the current one) and sub-directories where missing. Refuses a set with a path that is absolute,
/// leaves the directory, has an empty part or stands twice, and one that would go through a link
/// below the directory or replace a directory, device or pipe. A link in a file's own place is
/// replaced by the file. The fault is one plain sentence, the same in every locale, safe to print.
WriteResult write_files(const std::filesystem::path& directory,
                        const std::vector<OutputFile>& files);

} // namespace coilwright
