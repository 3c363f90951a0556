// Many dimensions at once: lines first, then the figures that fit on them, then the others where
// room is left.
#pragma once

#include "geometry/drawing/placer.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// A dimension on paper, mm: measured along a unit vector, its line `offset` to the left of `along`
/// from the farther of the points.
struct PaperDimension {
    Vec2 from{0, 0}, to{0, 0};
    Vec2 along{1, 0};
    double offset = 0;
    std::string text;
    bool optional = false; // left out where its figure has no place
};

/// Places of a grid over a frame, those nearest to a point first, none farther than `farthest`.
std::vector<Vec2> places_in_frame(const PaperBox& frame, Vec2 target, double farthest = 120);

/// A dimension as it is drawn.
struct LaidDimension {
    std::size_t of = 0;          // place in the list handed in
    Vec2 from{0, 0}, to{0, 0};   // ends of its line
    std::vector<LineItem> lines; // extension lines, strokes, the line, a leader
    TextItem figure;
};

/// Lays them all; figures are never upside down. What is drawn is taken in the placer.
std::vector<LaidDimension> lay_dimensions(Placer& placer,
                                          const std::vector<PaperDimension>& dimensions);

} // namespace coilwright
