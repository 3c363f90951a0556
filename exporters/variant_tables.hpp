// Variants side by side, as CSV and as a table for the terminal.
#pragma once

#include "geometry/variants/variants.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// A row a variant, in the order of their indices: `variant` (from 1), the choices by their names,
/// `laid`, the figures (SI), `currency`, `fault`. RFC 4180. Precondition: a result for each
/// variant.
std::string variants_csv(const VariantStudy& study, const std::vector<VariantResult>& results);

/// The same in the design's unit.
std::string variants_table(const VariantStudy& study, const std::vector<VariantResult>& results,
                           DisplayUnit unit);

/// A figure with its unit: "63.6 sq ft", "1.32".
std::string figure_text(const FigureColumn& column, double value, DisplayUnit unit);

} // namespace coilwright
