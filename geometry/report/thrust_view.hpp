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

/// The lines of a section, drawn where they stand, and what of them the legend has to name.
struct DrawnLines {
    bool centred = false, least = false, greatest = false;
    bool leaves = false; // a ring marks where one leaves its contact
    bool any() const { return centred || least || greatest; }
};
DrawnLines add_thrust_lines(Sheet& sheet, const HalfFrame& frame, const ThrustLine& centred,
                            const ThrustLine& least, const ThrustLine& greatest);

/// What is drawn and nothing else, one below the other: the wall, its contacts, the lines; 24 mm
/// high where all are.
void add_thrust_legend(Sheet& sheet, Vec2 top_left, const DrawnLines& drawn);

} // namespace coilwright
