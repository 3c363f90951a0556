// A directory of a test's own, and programs that read what was written there.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace coilwright {

/// An empty directory that goes with the test.
class ScratchDirectory {
public:
    ScratchDirectory();
    ~ScratchDirectory();
    ScratchDirectory(const ScratchDirectory&) = delete;
    ScratchDirectory& operator=(const ScratchDirectory&) = delete;
    const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

std::string bytes_of(const std::filesystem::path& file);
void put_bytes(const std::filesystem::path& file, const std::string& bytes);
/// Everything below a directory, as sorted paths relative to it.
std::vector<std::string> all_below(const std::filesystem::path& directory);

/// Runs a program (no shell) and returns what it printed on standard output; throws
/// std::runtime_error with that text if it does not end with 0.
std::string output_of(const std::vector<std::string>& command);

} // namespace coilwright
