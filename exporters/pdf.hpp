// Paper sheets as PDF and PNG, with Cairo and Pango.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Text metrics as pdf_bytes sets them.
MeasureText pango_measure();

/// A PDF with one page a sheet, page boxes exact, fonts embedded, no time stamp, an outline of the
/// sheets' titles.
std::string pdf_bytes(const std::vector<Sheet>& sheets, const std::string& title);

/// One sheet as PNG, for pictures and for looking.
std::string png_bytes(const Sheet& sheet, double dots_per_inch);

} // namespace coilwright
