// Views laid on sheets: paper sizes, the frame with its title block, scales.
#pragma once

#include "geometry/drawing/page.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/views/view.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// Sheets that drawings can be laid on, by name, portrait: a4 to a1 (ISO 216), letter, tabloid (11
/// x 17 in), arch-a to arch-d (9 x 12 in to 24 x 36 in).
const std::vector<PaperSize>& drawing_papers();
/// Nothing for a name that is none of them.
std::optional<PaperSize> drawing_paper(const std::string& name);

/// A landscape sheet with its frame, title block, check ruler and caution; `body` is free.
Page start_drawing(const Drafting& drafting, const std::string& title, const std::string& scale);

/// Writes "Sheet i of n" into each title block.
void number_drawings(std::vector<Sheet>& sheets);

/// Millimetres around a view that its dimensions, names and caption take.
struct ViewMargins {
    double left = 0, right = 0, bottom = 0, top = 0;
};
ViewMargins margins_of(const View& view);

/// Draws a view in a box at a scale, its extent and margins in the middle, the title under it.
void lay_view(Sheet& sheet, const PaperBox& box, const View& view, const Scale& scale,
              const MeasureText& measure);

/// A sheet of one view or several, all to the largest standard scale at which they fit, in the
/// arrangement that allows the largest. Even at 1:20000 nothing is shrunk to fit.
Sheet view_sheet(const Drafting& drafting, const std::string& title,
                 const std::vector<View>& views);
/// The scale that view_sheet takes.
Scale sheet_scale(const Drafting& drafting, const std::vector<View>& views);

/// One view alone on a sheet as large as it needs at a scale that fits within a size in mm.
Sheet picture_sheet(const View& view, const Drafting& drafting, double width, double height);

} // namespace coilwright
