// The whole program but for main, so that tests can call it.
#pragma once

#include "cli/console.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Runs the program with its arguments (without its own name) and returns its exit code
/// (cli/exit_code.hpp). Prints what went wrong on `err`; lets no exception out.
int run_program(const std::vector<std::string>& arguments, Console& console) noexcept;

} // namespace coilwright
