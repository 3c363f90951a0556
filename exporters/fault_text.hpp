// Why the system refused, in words that are the same in every locale.
#pragma once

#include <string>

namespace coilwright {

/// "cannot WHAT: REASON" for an error number of the system (errno):
/// ("write out/a.csv", ENOSPC) -> "cannot write out/a.csv: the disk is full".
std::string cannot(const std::string& what, int error_number);

/// A path as it can be printed: control characters, which could steer a terminal, become "\xNN".
std::string shown_path(const std::string& path);

} // namespace coilwright
