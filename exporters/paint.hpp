// Paper items drawn on a Cairo context. Included only by the sources of pdf.hpp.
#pragma once

#include "geometry/drawing/paper.hpp"

#include <cairomm/context.h>

namespace coilwright {

/// Turns a context whose unit is the point (or pixel) with y down into millimetres with y up.
void use_millimetres(const Cairo::RefPtr<Cairo::Context>& context, double height_mm,
                     double units_per_mm);

/// Paints every item in order. Throws std::runtime_error where a number is not finite.
void paint(const Cairo::RefPtr<Cairo::Context>& context, const Sheet& sheet);

/// Throws std::runtime_error if the sheet has no size or one over 5 m.
void require_paintable(const Sheet& sheet);

} // namespace coilwright
