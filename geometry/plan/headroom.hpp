// Clear heights inside a dome after plaster, and the verdict against the rule that its use names.
#pragma once

#include "geometry/plan/region.hpp"
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

/// What a room loses to the walls of joined domes that stand in it, where a join keeps another's:
/// each as far as its outside face at the floor, where it reaches farthest, with the room's plaster
/// on it.
std::vector<Disc> walls_in_room(const BuildingForm& building, const DomeForm& form,
                                double inside_plaster);

/// Floor area with at least that clear height, m2: a hemisphere of radius 8 ft on the floor, no
/// plaster, at 7 ft -> 47.124 sq ft. Radius 3 m, less a wall of radius 2 m whose pole stands 4 m
/// off: 26.2845 m2. What two walls take twice is taken twice: never too much floor.
double floor_area_at(const DomeForm& form, double inside_plaster, double height,
                     const std::vector<Disc>& walls = {});
/// Side of the largest square about the pole with that clear height (its corner governs, or the
/// nearest wall that stands in the room); 0 where the pole itself stands in a wall.
double clear_square_at(const DomeForm& form, double inside_plaster, double height,
                       const std::vector<Disc>& walls = {});

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

/// The clear heights that tables show: 7 ft, 6 ft 8 in, 5 ft.
inline constexpr double shown_heights[] = {7 * metres_per_foot, 80 * metres_per_inch,
                                           5 * metres_per_foot};

/// One per dome, with the verdict against the rule of its use in design.rules: not judged where
/// there is none (a store); advice where a rule names a height but no place for it, and it is had
/// over less than a 30 in square; else holds or fails, with the springline (whole courses higher)
/// or, where no springline helps, the diameter that would pass. Floor that a joined dome's kept
/// wall takes is not counted; in open plan each dome is judged by its own circle.
std::vector<Headroom> headroom(const Design& design, const Schedule& schedule);

} // namespace coilwright
