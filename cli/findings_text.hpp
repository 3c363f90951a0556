// Findings for the terminal: short, or whole.
#pragma once

#include "cli/console.hpp"
#include "geometry/base/length.hpp"
#include "geometry/checks/find_changes.hpp"

#include <vector>

namespace coilwright {

/// What does not hold, with its value and what to change; those that differ in their element alone
/// are one. Of what holds the names.
void print_short_findings(const std::vector<Finding>& findings,
                          const std::vector<SoughtChanges>& changes, DisplayUnit unit,
                          Console& console);

/// Each with its message, remedy and source; what holds on one line.
void print_findings(const std::vector<Finding>& findings, const std::vector<SoughtChanges>& changes,
                    DisplayUnit unit, Console& console);

} // namespace coilwright
