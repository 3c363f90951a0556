// What must be true of every sheet, read from the drawing model with the writer's own text metrics.
#pragma once

#include "geometry/drawing/boxes.hpp"

#include <string>
#include <vector>

namespace coilwright::testing {

/// Texts that overlap, texts that lines cross (unless they bring their white box), items that leave
/// the frame (the sheet less `margin` mm on every side), texts smaller than 2.8 mm. Empty: sound.
std::vector<std::string> sheet_faults(const Sheet& sheet, double margin,
                                      const MeasureText& measure);

/// The texts of a sheet, in the order drawn.
std::vector<std::string> texts_of(const Sheet& sheet);
std::vector<const TextItem*> text_items(const Sheet& sheet);
/// How many texts are exactly this.
int count_of(const Sheet& sheet, const std::string& text);
/// All texts joined by blanks.
std::string all_text(const Sheet& sheet);

} // namespace coilwright::testing
