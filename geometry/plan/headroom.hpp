// Clear heights inside a dome after plaster, and the verdict against the rule that its use names.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// Height above the finished floor of the plaster's face at a distance from the pole: the profile
/// offset along its normal (over the bags' crests), under a cap at most the cap's underside less
/// the plaster, within a skylight's last ring up to the top of its curb. 0 at and beyond the
/// plastered wall. A drawing's number: on site the face comes out within about 1 in (25 mm) of it.
double clear_height_at(const DomeForm& form, double inside_plaster, double from_pole);
/// Greatest distance from the pole with that clear height; 0 if none.
double clear_radius_at(const DomeForm& form, double inside_plaster, double height);
/// Floor area with at least that clear height, m2: a hemisphere of radius 8 ft on the floor, no
/// plaster, at 7 ft -> 47.124 sq ft.
double floor_area_at(const DomeForm& form, double inside_plaster, double height);
/// Side of the largest square about the pole with that clear height (its corner governs).
double clear_square_at(const DomeForm& form, double inside_plaster, double height);

/// What a sheet or a table shows of one dome's headroom.
struct HeadroomRow {
    double height = 0, radius = 0, area = 0, square = 0;
};
struct Headroom {
    std::string dome;
    double at_pole = 0;            // clear height beside the pole
    double floor_area = 0;         // clear floor after plaster
    std::vector<HeadroomRow> rows; // 7 ft, 6 ft 8 in, 5 ft
    Finding verdict;
};

/// One per dome, with the verdict against the rule of its use in design.rules: not judged where there
/// is none (a store); advice where a rule names a height but no place for it, and it is had over less than a
/// 30 in square; else holds or fails, with the springline (whole courses higher) or, where no
/// springline helps, the diameter that would pass.
std::vector<Headroom> headroom(const Design& design, const Schedule& schedule);

} // namespace coilwright
