// Paper sheets as PDF and PNG, with Cairo and Pango. Text is set in DejaVu Sans, which keeps its
// figures apart at arm's length; signs it lacks fall back on the system's other fonts.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <stdexcept>
#include <string>
#include <vector>

namespace coilwright {

/// The machine lacks the font that sheets are set in. One sentence that says what to install.
class MissingFont : public std::runtime_error {
    using std::runtime_error::runtime_error;
};

/// Text metrics as pdf_bytes and png_bytes set them, to 0.01 mm: the advance width, and the ink
/// above and below the baseline (0 for blanks). May be called from several threads. Throws
/// MissingFont.
MeasureText pango_measure();

/// A PDF 1.5 with one page a sheet, page boxes exact to 1e-4 mm, fonts embedded, text as text, no
/// time stamp, an outline of the sheets' titles. The same sheets give the same bytes.
/// May be called from several threads. Throws MissingFont; else std::runtime_error, and nothing
/// else, with one plain sentence where a library fails, a sheet has no size or is over 5 m, or a
/// number is not finite.
std::string pdf_bytes(const std::vector<Sheet>& sheets, const std::string& title);

/// One sheet as PNG on white, for pictures and for looking. Same promises; at most 20000 pixels a
/// side.
std::string png_bytes(const Sheet& sheet, double dots_per_inch);

} // namespace coilwright
