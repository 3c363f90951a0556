// A view with a place on paper for all that it says: what every writer draws from, so that paper
// and CAD file show the same.
#pragma once

#include "geometry/views/dimension_lines.hpp"
#include "geometry/views/drawing_sheet.hpp"

namespace coilwright {

/// A name where it stands, and its leader (equal ends: none).
struct LaidNote {
    TextItem text;
    Vec2 from{0, 0}, to{0, 0};
    bool led() const { return from != to; }
};

/// Positions in mm on paper. Dimensions and notes that are optional and found no room are not
/// there.
struct LaidView {
    const View* view = nullptr;
    double per_metre = 1;                  // mm on paper
    Vec2 low{0, 0};                        // where...
    Vec2 extent_low{0, 0};                 // ...this place of the view lies
    std::vector<PaperItem> symbols;        // north
    std::vector<LaidDimension> dimensions; // `of`: place in view->dimensions
    std::vector<LaidNote> notes;
    TextItem title;
    Vec2 on_paper(Vec2 metres) const { return low + (metres - extent_low) * per_metre; }
};

/// Lays a view in a box at a scale, its extent and margins in the middle, the title under it. The
/// view must outlive what is returned.
LaidView laid_view(const PaperBox& box, const View& view, const Scale& scale,
                   const MeasureText& measure);

/// Draws it: hatches, lines, symbols, dimensions, notes, title.
void draw_view(Sheet& sheet, const LaidView& laid);

} // namespace coilwright
