// The rooms of a building after plaster: what the schedule lists, the checks ask and models show.
#pragma once

#include "geometry/plan/building_form.hpp"

#include <string>
#include <vector>

namespace coilwright {

/// Domes that belong together, as places in the building's list, in its order.
struct DomeGroup {
    std::vector<int> domes;
};
/// Whether `a` is wider than `b`; of two alike the one whose id comes first.
bool is_larger(const DomeForm& a, const DomeForm& b);
/// Domes joined in open plan are one room.
std::vector<DomeGroup> rooms_of(const BuildingForm& building);
/// Buildings: domes joined in any way, or by a tunnel, are one building.
std::vector<DomeGroup> houses_of(const BuildingForm& building);

/// A room of one dome or of several in open plan, or a tunnel. No two overlap.
struct BuildingRoom {
    std::string id;                 // of its largest dome, or of its tunnel
    std::vector<std::string> domes; // in the building's order; of a tunnel none
    std::string tunnel;
    Region floor;      // clear floor after plaster; doorways are not in it
    double volume = 0; // clear, m3, above the floor
    double height = 0; // greatest clear height
};

/// Rooms of domes, then tunnels, each in the building's order. A dome of 9 ft with 1-1/2 in of
/// plaster: floor pi (4.375 ft)^2 = 60.13 sq ft. `decide`: as for lay().
std::vector<BuildingRoom> building_rooms(const BuildingForm& building, double inside_plaster,
                                         const DecideRegion& decide = {});

/// Clear plan of a room at a height above the floor: the domes' discs within the plaster, less the
/// walls of other domes that a join keeps in them, with plaster on those.
PlanExpression room_plan(const BuildingForm& building, const DomeGroup& room, double inside_plaster,
                         double height);
/// The same of a tunnel: the strip between its plastered walls to its end, less the rooms of its
/// domes and of those in open plan with them.
PlanExpression room_plan(const BuildingForm& building, const TunnelForm& tunnel,
                         double inside_plaster, double height);
/// Where a tunnel's clear room ends, along its axis from its first dome's pole; its other dome's
/// room may begin before.
double tunnel_room_end(const TunnelForm& tunnel, double inside_plaster);
/// How far a dome's room reaches into a tunnel of it at a height: the clear radius, or where the
/// tunnel leaves the wall standing, its outside at the floor.
double room_radius(const TunnelForm& tunnel, const DomeForm& dome, double inside_plaster,
                   double height);

/// Area of a plan, m2. Where doubles are no judge the shapes are taken some micrometres smaller.
/// Discs of radius 1 a unit apart: 4 pi/3 + sqrt 3/2 = 5.0548.
double plan_area(PlanExpression plan);
/// Floor of a group with that clear height after plaster; joined domes are counted once.
double group_floor(const DomeGroup& group, const BuildingForm& building, double inside_plaster,
                   double height);

} // namespace coilwright
