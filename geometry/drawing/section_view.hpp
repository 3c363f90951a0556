// A dome cut through its pole, to scale: the courses as they lie, the inside curve, the openings in
// the plane of the cut, and the heights that matter.
#pragma once

#include "geometry/drawing/placer.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/plan/plan_building.hpp"

namespace coilwright {

struct SectionFrame {
    Vec2 floor{0, 0}; // mm: the pole's axis at the finished floor
    double mm_per_metre = 0;
    Vec2 at(double from_axis, double height) const {
        return floor + Vec2(from_axis, height) * mm_per_metre;
    }
};

/// Room that the dimensions take beside, below and above the section, mm.
inline constexpr double section_left = 27, section_right = 27, section_below = 15,
                        section_above = 5;

/// Width of a dome over its walls and height from its bottom to its top, metres.
Vec2 section_size(const DomeForm& dome);

/// Draws the section along `right` (the bearing on the right-hand side), with dimensions.
void add_section(Sheet& sheet, Placer& placer, const BuildingPlan& plan, const DomeForm& dome,
                 Bearing right, const SectionFrame& frame);

} // namespace coilwright
