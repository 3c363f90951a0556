// Setting of single lines of text with Pango, shared by measuring and painting so that both agree.
// Included only by the sources of pdf.hpp.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <cairomm/context.h>

namespace coilwright {

/// The text as one line of valid UTF-8: control characters become blanks.
std::string one_line(const std::string& text);

/// Extent of a line as show_text paints it. Throws MissingFont (pdf.hpp).
TextExtent measure_text(const std::string& text, double size, bool bold);

/// Paints a text item in a context whose unit is the millimetre with y up.
void show_text(const Cairo::RefPtr<Cairo::Context>& context, const TextItem& item);

} // namespace coilwright
