// Half of a dome or a tunnel cut upright, with lines of thrust in it, to scale.
#pragma once

#include "geometry/drawing/page.hpp"
#include "geometry/drawing/scale.hpp"
#include "geometry/statics/dome_slice.hpp"

#include <vector>

namespace coilwright {

/// Where a half section lies on the paper: its axis at the floor.
struct HalfFrame {
    Vec2 floor{0, 0};
    double mm_per_metre = 0;
    Vec2 at(double x, double z) const { return floor + Vec2(x, z) * mm_per_metre; }
};

/// The courses with the flats on which their joints carry.
void add_half_section(Sheet& sheet, const std::vector<WallCourse>& courses, const HalfFrame& frame);

/// The points at which a line acts in the joints; a ring marks each that lies outside its contact.
void add_thrust_line(Sheet& sheet, const ThrustLine& line, const HalfFrame& frame,
                     const Stroke& stroke);

namespace thrust_pens {
inline const Stroke centred{0.7, {0}, {}};
inline const Stroke least{0.4, {0}, {3, 1.2}};
inline const Stroke greatest{0.4, {0}, {0.6, 1}};
} // namespace thrust_pens

/// What the three lines mean, one below the other; 15 mm high.
void add_thrust_legend(Sheet& sheet, Vec2 top_left);

} // namespace coilwright
