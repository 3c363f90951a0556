#include "geometry/plan/building_rooms.hpp"

#include "geometry/plan/headroom.hpp"
#include "geometry/plan/room.hpp"
#include "geometry/plan/tunnel_headroom.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coilwright {

namespace {

constexpr double chord = 0.0005; // of a room's edge for its volume

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

int place_of_dome(const BuildingForm& building, const std::string& id) {
    for (std::size_t i = 0; i < building.domes.size(); ++i)
        if (building.domes[i].id == id)
            return static_cast<int>(i);
    return -1;
}

std::vector<DomeGroup> grouped(const BuildingForm& building,
                               const std::vector<std::pair<std::string, std::string>>& pairs) {
    std::vector<int> group(building.domes.size());
    std::iota(group.begin(), group.end(), 0);
    for (const auto& [one, other] : pairs) {
        const int a = place_of_dome(building, one), b = place_of_dome(building, other);
        if (a < 0 || b < 0)
            continue;
        const int from = std::max(group[at(a)], group[at(b)]);
        const int to = std::min(group[at(a)], group[at(b)]);
        std::replace(group.begin(), group.end(), from, to);
    }
    std::vector<DomeGroup> groups;
    for (std::size_t i = 0; i < group.size(); ++i) {
        if (group[i] == static_cast<int>(i))
            groups.emplace_back();
        const auto first = std::find_if(groups.begin(), groups.end(), [&](const DomeGroup& g) {
            return g.domes.empty() || g.domes.front() == group[i];
        });
        first->domes.push_back(static_cast<int>(i));
    }
    return groups;
}

/// Adds a shape that is there, less others.
void add_term(PlanExpression& plan, const std::string& element, const Shape& solid,
              const std::vector<Shape>& less) {
    PlanTerm term{element, static_cast<int>(plan.shapes.size()), {}};
    plan.shapes.push_back(solid);
    for (const Shape& one : less) {
        term.less.push_back(static_cast<int>(plan.shapes.size()));
        plan.shapes.push_back(one);
    }
    plan.terms.push_back(std::move(term));
}

/// Other domes' kept walls in a dome's room at a height.
std::vector<Shape> walls_at(const BuildingForm& building, const DomeForm& dome, double plaster,
                            double height) {
    std::vector<Shape> walls;
    for (const JoinForm& join : building.joins) {
        if (join.keep.empty() || join.keep == dome.id ||
            (join.first != dome.id && join.second != dome.id))
            continue;
        const DomeForm* kept = find_dome(building, join.keep);
        if (const double r = kept ? outside_radius(*kept, height) : 0; r > 0)
            walls.push_back(Disc{kept->at, r + plaster});
    }
    return walls;
}

Region floor_region(const PlanExpression& plan, const DecideRegion& decide) {
    return plan.shapes.empty() ? Region{} : region_of(plan, decide);
}

/// Integral of a plan's area from the floor to the top: the middles of level slices.
template <typename PlanAt>
double volume_under(double top, PlanAt plan_at) {
    constexpr int slices = 300;
    double sum = 0;
    for (int i = 0; i < slices; ++i)
        sum += plan_area(plan_at(top * (i + 0.5) / slices));
    return sum * top / slices;
}

} // namespace

bool is_larger(const DomeForm& a, const DomeForm& b) {
    const double apart = a.profile.half_span - b.profile.half_span;
    return std::abs(apart) > 1e-9 ? apart > 0 : a.id < b.id;
}

std::vector<DomeGroup> rooms_of(const BuildingForm& building) {
    std::vector<std::pair<std::string, std::string>> pairs;
    for (const JoinForm& join : building.joins)
        if (join.keep.empty())
            pairs.emplace_back(join.first, join.second);
    return grouped(building, pairs);
}

std::vector<DomeGroup> houses_of(const BuildingForm& building) {
    std::vector<std::pair<std::string, std::string>> pairs;
    for (const JoinForm& join : building.joins)
        pairs.emplace_back(join.first, join.second);
    for (const TunnelForm& tunnel : building.tunnels)
        if (!tunnel.to.empty())
            pairs.emplace_back(tunnel.from, tunnel.to);
    return grouped(building, pairs);
}

PlanExpression room_plan(const BuildingForm& building, const DomeGroup& room, double inside_plaster,
                         double height) {
    PlanExpression plan;
    for (const int i : room.domes) {
        const DomeForm& dome = building.domes[at(i)];
        if (const double r = clear_radius_at(dome, inside_plaster, height); r > 0)
            add_term(plan, dome.id, Disc{dome.at, r},
                     walls_at(building, dome, inside_plaster, height));
    }
    return plan;
}

double tunnel_room_end(const TunnelForm& tunnel, double inside_plaster) {
    return tunnel.end_wall ? tunnel.reach - tunnel.width - inside_plaster : tunnel.reach;
}

double room_radius(const TunnelForm& tunnel, const DomeForm& dome, double inside_plaster,
                   double height) {
    const bool stays = tunnel.wall_stays && dome.id == tunnel.from;
    return stays ? outside_radius(dome, 0) : clear_radius_at(dome, inside_plaster, height);
}

PlanExpression room_plan(const BuildingForm& building, const TunnelForm& tunnel,
                         double inside_plaster, double height) {
    const double half = clear_width_at(tunnel, inside_plaster, height) / 2;
    PlanExpression plan;
    if (half <= 0)
        return plan;
    std::vector<Shape> rooms;
    for (const DomeGroup& group : rooms_of(building)) {
        const bool touches = std::any_of(group.domes.begin(), group.domes.end(), [&](int i) {
            const std::string& id = building.domes[at(i)].id;
            return id == tunnel.from || id == tunnel.to;
        });
        for (const int i : group.domes) {
            const DomeForm& dome = building.domes[at(i)];
            if (const double r = room_radius(tunnel, dome, inside_plaster, height);
                touches && r > 0)
                rooms.push_back(Disc{dome.at, r});
        }
    }
    const double end = tunnel_room_end(tunnel, inside_plaster);
    add_term(plan, tunnel.id, Box{tunnel.origin, tunnel.axis(), 0, end, -half, half}, rooms);
    return plan;
}

double plan_area(PlanExpression plan) {
    if (plan.shapes.empty())
        return 0;
    for (int tries = 0; tries < 8; ++tries) {
        if (const auto region = fast_region(plan))
            return region->area;
        for (std::size_t i = 0; i < plan.shapes.size(); ++i)
            if (Disc* disc = std::get_if<Disc>(&plan.shapes[i]))
                disc->radius -= 1e-6 * static_cast<double>(i + 1);
    }
    double sum = 0; // an upper bound
    for (const PlanTerm& term : plan.terms) {
        const Shape& solid = plan.shapes[at(term.solid)];
        if (const Disc* disc = std::get_if<Disc>(&solid))
            sum += pi * disc->radius * disc->radius;
        else if (const Box* box = std::get_if<Box>(&solid))
            sum += (box->to - box->from) * (box->high - box->low);
    }
    return sum;
}

double group_floor(const DomeGroup& group, const BuildingForm& building, double inside_plaster,
                   double height) {
    PlanExpression plan;
    for (const int i : group.domes) {
        const DomeForm& dome = building.domes[at(i)];
        const std::vector<Disc> walls = walls_in_room(building, dome, inside_plaster);
        if (const double r = clear_radius_at(dome, inside_plaster, height); r > 0)
            add_term(plan, dome.id, Disc{dome.at, r}, {walls.begin(), walls.end()});
    }
    return plan_area(std::move(plan));
}

std::vector<BuildingRoom> building_rooms(const BuildingForm& building, double inside_plaster,
                                         const DecideRegion& decide) {
    std::vector<BuildingRoom> rooms;
    for (const DomeGroup& group : rooms_of(building)) {
        BuildingRoom room;
        for (const int i : group.domes) {
            room.domes.push_back(building.domes[at(i)].id);
            room.height =
                std::max(room.height, clear_height_at(building.domes[at(i)], inside_plaster, 0));
        }
        const DomeForm* largest = nullptr;
        for (const int i : group.domes)
            if (const DomeForm& dome = building.domes[at(i)]; !largest || is_larger(dome, *largest))
                largest = &dome;
        room.id = largest->id;
        const auto plan = [&](double z) { return room_plan(building, group, inside_plaster, z); };
        room.floor = floor_region(plan(0), decide);
        const DomeForm& first = building.domes[at(group.domes.front())];
        room.volume =
            group.domes.size() == 1 && walls_in_room(building, first, inside_plaster).empty()
                ? revolved_volume(clear_room_curve(first, inside_plaster, chord))
                : volume_under(room.height, plan);
        rooms.push_back(std::move(room));
    }
    for (const TunnelForm& tunnel : building.tunnels) {
        BuildingRoom room;
        room.id = room.tunnel = tunnel.id;
        room.height = clear_height_at(tunnel, inside_plaster, 0);
        const auto plan = [&](double z) { return room_plan(building, tunnel, inside_plaster, z); };
        room.floor = floor_region(plan(0), decide);
        room.volume = volume_under(room.height, plan);
        rooms.push_back(std::move(room));
    }
    return rooms;
}

} // namespace coilwright
