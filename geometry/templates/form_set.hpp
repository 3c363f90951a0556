// All that is to be cut for a building's forms and frames: each shape once, with how often it is
// wanted, numbered as the list and the drawings name it.
#pragma once

#include "geometry/templates/forms.hpp"
#include "geometry/views/drawing_sheet.hpp"
#include "geometry/views/view.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Openings whose forms, frames and strips are alike, or one tunnel.
struct FormKind {
    std::string mark;             // "F1"
    std::vector<std::string> ids; // of openings, or of the tunnel
    ArchForm form;
    std::optional<FrameParts> frame;
    std::optional<SoffitStrip> strip;
    double springing = 0; // of the head, above the floor
    double sill = 0;
    bool curved_head = true; // a square one needs no template
};

struct FormSet {
    DisplayUnit unit = DisplayUnit::feet;
    FormStock stock;
    std::vector<FormKind> kinds;
    std::vector<ProfileBoard> boards;
};

/// In the order of the schedule's openings, then of its tunnels and domes. Openings too small for a
/// form of boards have none.
FormSet form_set(const Schedule& schedule);

/// Every shape that is cut, full size, for a cutter: the tool runs half a `kerf` outside each
/// outline (inside a hole). Rows of views: forms with their strips, frames and panes, boards.
std::vector<std::vector<View>> cutting_views(const FormSet& set, double kerf);

/// Sheets to print at full size: how they are joined, the lists of pieces, then the curves of
/// heads, strips and boards as tiles. Half of what is symmetric: it is turned over.
std::vector<Sheet> form_sheets(const Drafting& drafting, const FormSet& set);

} // namespace coilwright
