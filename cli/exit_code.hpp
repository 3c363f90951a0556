// What the program tells the shell.
#pragma once

namespace coilwright {

enum class ExitCode {
    done = 0,
    checks_failed = 1, // the design can be laid, and a check of it fails
    wrong_input = 2,   // the design or the command line is wrong
    no_access = 3,     // could not read or write, or ran out of memory
};

} // namespace coilwright
