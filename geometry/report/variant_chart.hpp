// Variants of a design as a chart: one panel a figure, over the first choice.
#pragma once

#include "geometry/drawing/paper.hpp"
#include "geometry/variants/variants.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// One sheet, A4 lying. Over the values of the first choice stands a line for each combination of
/// the others, as long as there are no more than six of these; else a dot for each variant. What
/// cannot be laid is left out. Figures are in the design's unit. Precondition: a result a variant.
Sheet variant_chart(const VariantStudy& study, const std::vector<VariantResult>& results,
                    const std::string& design_name, DisplayUnit unit, const MeasureText& measure);

} // namespace coilwright
