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
/// The sheets of a course in a book: where they lie in it, and they themselves; of a sheet that two
/// parts share only the half that is of `part` (its id; empty: the building has but one part).
struct CourseSheets {
    std::vector<std::size_t> places;
    std::vector<const Sheet*> sheets; // halves live until the program ends
    bool shared = false;
};
CourseSheets sheets_of_course(const std::vector<Sheet>& book, int course, const std::string& part);

/// All texts joined by blanks.
std::string all_text(const Sheet& sheet);

} // namespace coilwright::testing
