// The commands of the program. Each adds itself, with its options and help, to the command line.
#pragma once

#include "cli/console.hpp"
#include "cli/exit_code.hpp"

#include <functional>

namespace CLI {
class App;
}

namespace coilwright {

/// What the command line asked for; run after all of it was read.
using Action = std::function<ExitCode(Console&)>;

/// Each adds one sub-command that sets `chosen` when it is named.
void add_new_command(CLI::App& program, Action& chosen);
void add_check_command(CLI::App& program, Action& chosen);
void add_courses_command(CLI::App& program, Action& chosen);
void add_takeoff_command(CLI::App& program, Action& chosen);
void add_vary_command(CLI::App& program, Action& chosen);
void add_build_command(CLI::App& program, Action& chosen);

} // namespace coilwright
