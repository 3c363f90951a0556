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

/// Draws them all; figures are never upside down. What is drawn is taken in the placer.
void add_dimensions(Sheet& sheet, Placer& placer, const std::vector<PaperDimension>& dimensions);

} // namespace coilwright
