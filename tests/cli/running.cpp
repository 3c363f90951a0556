#include "tests/cli/running.hpp"

#include "cli/program.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <cstdlib>
#include <sstream>
#include <sys/wait.h>

namespace coilwright {

namespace {

Outcome run_with(const std::vector<std::string>& arguments, const std::string& input,
                 bool terminal) {
    std::istringstream in(input);
    std::ostringstream out;
    std::ostringstream err;
    Console console{in, out, err, terminal, terminal, terminal};
    const int code = run_program(arguments, console);
    return {code, out.str(), err.str()};
}

std::string quoted(const std::string& text) {
    std::string result = "'";
    for (const char c : text) {
        result += c == '\'' ? std::string("'\\''") : std::string(1, c);
    }
    return result + "'";
}

} // namespace

Outcome run(const std::vector<std::string>& arguments, const std::string& input) {
    return run_with(arguments, input, false);
}

Outcome run_on_terminal(const std::vector<std::string>& arguments, const std::string& input) {
    return run_with(arguments, input, true);
}

Outcome shell(const std::filesystem::path& folder, const std::string& command) {
    const ScratchDirectory printed;
    const std::string out = printed.path() / "out";
    const std::string err = printed.path() / "err";
    const int status = std::system(("cd " + quoted(folder) + " && ( " + command + "\n) >" +
                                    quoted(out) + " 2>" + quoted(err) + " </dev/null")
                                       .c_str());
    return {WIFEXITED(status) ? WEXITSTATUS(status) : -1, bytes_of(out), bytes_of(err)};
}

std::string program() {
    return quoted(COILWRIGHT_PROGRAM);
}

std::string in_project(const std::string& path) {
    return std::string(COILWRIGHT_SOURCE_DIR) + "/" + path;
}

std::vector<std::string> demos() {
    std::vector<std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(in_project("models"))) {
        if (entry.path().extension() == ".toml") {
            files.push_back(entry.path().string());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace coilwright
