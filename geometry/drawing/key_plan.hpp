// The whole building small, with the part that a sheet is for in black.
#pragma once

#include "geometry/drawing/course_part.hpp"
#include "geometry/drawing/pen.hpp"

namespace coilwright {

/// The ground that the building covers, its piers and tunnels included, metres.
struct GroundBounds {
    Vec2 low{0, 0}, high{0, 0};
};
GroundBounds ground_bounds(const BuildingForm& building);

/// Outlines of domes, tunnels and piers in a box, north up, not to scale; the dome or tunnel `part`
/// filled black, the others white.
void add_key_plan(Sheet& sheet, const PaperBox& box, const BuildingForm& building,
                  const std::string& part);

} // namespace coilwright
