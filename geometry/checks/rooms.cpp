#include "geometry/checks/rooms.hpp"

#include "geometry/plan/headroom.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace coilwright {

namespace {

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

} // namespace

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

Subject subject_of(const DomeGroup& group, const Design& design, const BuildingForm& building) {
    Subject subject;
    for (const int i : group.domes) {
        const std::string& id = building.domes[at(i)].id;
        subject.name += (subject.name.empty() ? "dome." : " + dome.") + id;
        if (const Dome* dome = find_dome(design, id); dome && i == group.domes.front())
            subject.place = dome->place;
    }
    return subject;
}

bool is_lived_in(const DomeForm& dome) {
    return dome.use == Use::habitable || dome.use == Use::tiny_house;
}

DomeGroup lived_in(const DomeGroup& group, const BuildingForm& building) {
    DomeGroup part;
    for (const int i : group.domes)
        if (is_lived_in(building.domes[at(i)]))
            part.domes.push_back(i);
    return part;
}

bool holds_dome(const DomeGroup& group, const BuildingForm& building, const std::string& id) {
    return std::any_of(group.domes.begin(), group.domes.end(),
                       [&](int i) { return building.domes[at(i)].id == id; });
}

double union_area(const std::vector<RoomDisc>& rooms) {
    PlanExpression plan;
    for (const RoomDisc& room : rooms)
        if (room.floor.radius > 0) {
            PlanTerm term;
            term.solid = static_cast<int>(plan.shapes.size());
            plan.shapes.push_back(room.floor);
            for (const Disc& wall : room.walls) {
                term.less.push_back(static_cast<int>(plan.shapes.size()));
                plan.shapes.push_back(wall);
            }
            plan.terms.push_back(std::move(term));
        }
    if (plan.shapes.empty())
        return 0;
    // Where doubles are no judge, discs a few thousandths of a millimetre smaller have the same
    // area.
    for (int tries = 0; tries < 8; ++tries) {
        if (const auto region = fast_region(plan))
            return region->area;
        for (std::size_t i = 0; i < plan.shapes.size(); ++i)
            std::get<Disc>(plan.shapes[i]).radius -= 1e-6 * static_cast<double>(i + 1);
    }
    double sum = 0; // an upper bound
    for (const RoomDisc& room : rooms)
        sum += pi * room.floor.radius * room.floor.radius;
    return sum;
}

double group_floor(const DomeGroup& group, const BuildingForm& building, double inside_plaster,
                   double height) {
    std::vector<RoomDisc> rooms;
    for (const int i : group.domes) {
        const DomeForm& dome = building.domes[at(i)];
        rooms.push_back({{dome.at, clear_radius_at(dome, inside_plaster, height)},
                         walls_in_room(building, dome, inside_plaster)});
    }
    return union_area(rooms);
}

bool leads_out(const OpeningForm& opening, const BuildingForm& building) {
    if (opening.niche_depth > 0 || opening.use == OpeningUse::niche)
        return false;
    if (opening.in_tunnel)
        return true;
    const DomeForm* dome = find_dome(building, opening.in);
    if (!dome)
        return false;
    const double z = (opening.sill + opening.top) / 2;
    const Vec2 outside = dome->at + along(opening.bearing) * (outside_radius(*dome, z) + 0.01);
    return std::none_of(building.domes.begin(), building.domes.end(), [&](const DomeForm& other) {
        return &other != dome && (outside - other.at).norm() < outside_radius(other, z);
    });
}

std::string dome_served(const OpeningForm& opening, const BuildingForm& building) {
    if (!opening.in_tunnel)
        return opening.in;
    const TunnelForm* tunnel = find_tunnel(building, opening.in);
    return tunnel ? tunnel->from : std::string();
}

} // namespace coilwright
