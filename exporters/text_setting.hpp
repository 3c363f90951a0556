// Setting of single lines of text with Pango, shared by measuring and painting so that both agree.
// Included only by the sources of pdf.hpp.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <cairomm/context.h>

namespace coilwright {

/// Extent of a line as show_text paints it. Throws std::runtime_error without fonts.
TextExtent measure_text(const std::string& text, double size, bool bold);

/// Paints a text item in a context whose unit is the millimetre with y up.
void show_text(const Cairo::RefPtr<Cairo::Context>& context, const TextItem& item);

} // namespace coilwright
