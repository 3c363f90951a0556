// DXF files read back by ezdxf, which shares no code with the writer.
#pragma once

#include <map>
#include <string>
#include <vector>

namespace coilwright::testing {

using Words = std::vector<std::string>;

/// What read_dxf.py finds in a file, by the first word of its lines (listed at its head). Throws
/// std::runtime_error where the reader refuses it.
std::map<std::string, std::vector<Words>> read_dxf(const std::string& text);

} // namespace coilwright::testing
