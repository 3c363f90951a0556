// The works file of a command line, and all that is worked out by it.
#pragma once

#include "cli/console.hpp"
#include "cli/exit_code.hpp"
#include "geometry/takeoff/worked_out.hpp"

#include <optional>
#include <string>

namespace coilwright {

/// A works file, or the exit code of a command that has said why there is none.
struct WorksFile {
    std::optional<Works> works;
    std::string name, text; // as read; empty: there is none
    ExitCode code = ExitCode::done;
};

/// Reads `works`, or, if it is empty, the file beside `design` that has its name and the ending
/// ".works"; without one the works are those of default_works(). Faults are printed.
WorksFile read_works_file(const std::string& works, const std::string& design, Console& console);

/// Whether no price of a tube is misnamed (faults_of_tube_prices); if not, that is printed.
bool prices_fit(const Design& design, const WorksFile& file, Console& console);

/// Works everything out; faults of the works against the design are printed, and then there is
/// nothing.
std::optional<WorkedOut> work_out(const BuildingPlan& plan, const WorksFile& file,
                                  const std::string& design, Console& console);

} // namespace coilwright
