// What the checks say of rooms and buildings (geometry/plan/building_rooms.hpp): who lives in them,
// and what leads out of them.
#pragma once

#include "geometry/checks/held_against.hpp"
#include "geometry/plan/building_rooms.hpp"
#include "geometry/plan/schedule.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// "dome.hall", or "dome.hall + dome.sleep"; the place of the first.
Subject subject_of(const DomeGroup& group, const Design& design, const BuildingForm& building);

/// Whether people stay in a dome: habitable or tiny-house.
bool is_lived_in(const DomeForm& dome);
/// The part of a group that is lived in.
DomeGroup lived_in(const DomeGroup& group, const BuildingForm& building);
bool holds_dome(const DomeGroup& group, const BuildingForm& building, const std::string& id);

/// Whether an opening leads from its dome or tunnel into the open: no niche, no door to a joined
/// dome.
bool leads_out(const OpeningForm& opening, const BuildingForm& building);
/// The dome that an opening serves: its own, or that which its tunnel starts from.
std::string dome_served(const OpeningForm& opening, const BuildingForm& building);

} // namespace coilwright
