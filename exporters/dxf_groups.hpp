// The lines that a DXF file is made of: a group code and its value. Included by the sources of
// dxf_file.hpp.
#pragma once

#include "geometry/base/vec.hpp"

#include <string>

namespace coilwright {

/// "  8\nA-WALL\n". Text is written as it stands: it must be safe (dxf_text).
std::string dxf_group(int code, const std::string& value);
std::string dxf_group(int code, int value);
/// To 1e-6 of the file's unit unless more is asked for. Throws std::runtime_error where it is not
/// finite.
std::string dxf_real(int code, double value, int decimals = 6);
/// A bulge, finer: a flat arc's radius hangs on it.
inline std::string dxf_bulge(double bulge) {
    return dxf_real(42, bulge, 12);
}
/// Codes `code`, `code` + 10 and `code` + 20, z being 0.
std::string dxf_point(int code, Vec2 point);

/// A person's text: ASCII, other characters as \U+XXXX, no control character, no sign that a reader
/// would take for a code ("%%", "^").
std::string dxf_text(const std::string& text);

} // namespace coilwright
