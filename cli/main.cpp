#include "cli/program.hpp"

#include <csignal>
#include <cstdlib>
#include <iostream>
#include <string_view>
#include <unistd.h>

namespace {

bool set_in_environment(const char* name) {
    const char* value = std::getenv(name);
    return value != nullptr && *value != '\0';
}

bool is_dumb_terminal() {
    const char* terminal = std::getenv("TERM");
    return terminal == nullptr || std::string_view(terminal) == "dumb";
}

} // namespace

int main(int count, char** values) try {
    // A file over the size limit is then a write that fails, which is told and taken back.
    std::signal(SIGXFSZ, SIG_IGN);
    const bool steerable = !is_dumb_terminal();
    const bool colour = steerable && !set_in_environment("NO_COLOR");
    coilwright::Console console{std::cin, std::cout, std::cerr};
    console.colour_out = colour && isatty(STDOUT_FILENO) != 0;
    console.colour_err = colour && isatty(STDERR_FILENO) != 0;
    console.progress = steerable && isatty(STDERR_FILENO) != 0;
    const std::vector<std::string> arguments(values + (count > 0 ? 1 : 0), values + count);
    return coilwright::run_program(arguments, console);
} catch (...) { // only memory for the arguments can run out here
    return 3;
}
