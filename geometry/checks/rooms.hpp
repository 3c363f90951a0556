// Which domes make one room, which one building, and what leads out of them.
#pragma once

#include "geometry/checks/held_against.hpp"
#include "geometry/plan/schedule.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Domes that belong together, as places in the building's list, in its order.
struct DomeGroup {
    std::vector<int> domes;
};
/// Rooms: domes joined in open plan are one room.
std::vector<DomeGroup> rooms_of(const BuildingForm& building);
/// Buildings: domes joined in any way, or by a tunnel, are one building.
std::vector<DomeGroup> houses_of(const BuildingForm& building);

/// "dome.hall", or "dome.hall + dome.sleep"; the place of the first.
Subject subject_of(const DomeGroup& group, const Design& design, const BuildingForm& building);

/// Whether people stay in a dome: habitable or tiny-house.
bool is_lived_in(const DomeForm& dome);
/// The part of a group that is lived in.
DomeGroup lived_in(const DomeGroup& group, const BuildingForm& building);
bool holds_dome(const DomeGroup& group, const BuildingForm& building, const std::string& id);

/// The floor of one dome, less the walls of joined domes that stand in it.
struct RoomDisc {
    Disc floor;
    std::vector<Disc> walls;
};
/// Area of the union of floors, m2. Two of radius 1 a unit apart: 4 pi/3 + sqrt 3/2 = 5.0548.
double union_area(const std::vector<RoomDisc>& rooms);
/// Floor of a group with that clear height, after plaster; joined domes are counted once, walls of
/// other domes that stand in it not.
double group_floor(const DomeGroup& group, const BuildingForm& building, double inside_plaster,
                   double height);

/// Whether an opening leads from its dome or tunnel into the open: no niche, no door to a joined
/// dome.
bool leads_out(const OpeningForm& opening, const BuildingForm& building);
/// The dome that an opening serves: its own, or that which its tunnel starts from.
std::string dome_served(const OpeningForm& opening, const BuildingForm& building);

} // namespace coilwright
