// Clear heights and widths along a tunnel after plaster.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// Height above the finished floor of the plaster's face at a distance across from the tunnel's
/// axis: its profile offset along its normal. 0 at and beyond the plastered wall.
double clear_height_at(const TunnelForm& form, double inside_plaster, double across);
/// Width about the axis with that clear height; at the floor that between the plastered walls. A
/// round vault of 4 ft that springs at 5 ft, no plaster, at 6 ft -> 2 sqrt(2^2 - 1^2) = 3.464 ft.
double clear_width_at(const TunnelForm& form, double inside_plaster, double height);

/// Floor of a tunnel with at least that clear height, m2: the strip of that clear width from the
/// room of its dome, as far as that has this height, through the dome's wall to the tunnel's end,
/// the end wall's plaster or the other dome's room. Where the dome's wall stays, from its outside
/// face. What it has of the domes' rooms is not in it, so that it can be added to theirs.
double floor_area_at(const BuildingForm& building, const TunnelForm& form, double inside_plaster,
                     double height);

struct TunnelHeadroomRow {
    double height = 0, width = 0, area = 0;
};
struct TunnelHeadroom {
    std::string tunnel;
    double at_middle = 0;  // clear height over its axis
    double width = 0;      // clear, at the floor
    double length = 0;     // along its axis at the floor, from room to room or to its end
    double floor_area = 0; // clear floor after plaster
    std::vector<TunnelHeadroomRow> rows; // 7 ft, 6 ft 8 in, 5 ft
};
std::vector<TunnelHeadroom> tunnel_headroom(const Design& design, const Schedule& schedule);

} // namespace coilwright
