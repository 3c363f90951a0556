// Running the program in tests: its whole inside in-process, or as a program of its own.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace coilwright {

struct Outcome {
    int code = -1;
    std::string out;
    std::string err;
};

/// Runs the program in this process, with `input` on its standard input.
Outcome run(const std::vector<std::string>& arguments, const std::string& input = {});
/// The same with colour and the progress line, as on a terminal.
Outcome run_on_terminal(const std::vector<std::string>& arguments, const std::string& input = {});

/// Runs a command line of the shell within a folder.
Outcome shell(const std::filesystem::path& folder, const std::string& command);

/// The path of the program, quoted for the shell.
std::string program();

/// A path below the project: ("models/washroom.toml").
std::string in_project(const std::string& path);

/// The demo designs, as paths, sorted.
std::vector<std::string> demos();

} // namespace coilwright
