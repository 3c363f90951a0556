#include "geometry/solids/wall_zones.hpp"

#include "geometry/solids/plan_ways.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr double beside = 2; // metres that an opening may reach beyond its dome, through a pier

PlanBounds around_disc(const Vec2& centre, double radius) {
    return bounds_of(circle_way(centre, radius, false), 0);
}

PlanBounds around_box(const Vec2& origin, const Vec2& axis, double to, double half) {
    return bounds_of(straight_way(origin, origin + to * axis), half);
}

double largest_radius(const DomeForm& dome) {
    return std::max(outside_radius(dome, dome.bottom()), outside_radius(dome, dome.springline));
}

} // namespace

WallZones::WallZones(const WallFaces& faces) : faces_(faces) {
    const BuildingForm& building = faces.building();
    const auto add = [&](SectionRole role, std::size_t count) {
        for (std::size_t i = 0; i < count; ++i)
            terms_.push_back(bounds_of({role, static_cast<int>(i)}));
    };
    add(SectionRole::dome_outside, building.domes.size());
    add(SectionRole::tunnel_body, building.tunnels.size());
    add(SectionRole::pier, building.buttresses.size());
    for (int i = 0; i < faces.size(); ++i)
        for (const double z : {faces[i].low, faces[i].high})
            ends_.emplace_back(z, i);
    for (int i = 0; i < faces.size(); ++i) // voids open rings from the floor up
        if (faces[i].tag.role == SectionRole::tunnel_void)
            ends_.emplace_back(0, i);
    std::sort(ends_.begin(), ends_.end());
}

PlanBounds WallZones::bounds_of(const SectionTag& tag) const {
    const BuildingForm& building = faces_.building();
    const auto index = static_cast<std::size_t>(tag.element);
    switch (tag.role) {
    case SectionRole::dome_outside:
    case SectionRole::dome_inside:
        return around_disc(building.domes[index].at, largest_radius(building.domes[index]));
    case SectionRole::tunnel_body:
    case SectionRole::tunnel_void: {
        const TunnelForm& tunnel = building.tunnels[index];
        return around_box(tunnel.origin, tunnel.axis(), tunnel.reach,
                          tunnel.profile.half_span + tunnel.width);
    }
    case SectionRole::pier: {
        const ButtressForm& pier = building.buttresses[index];
        const double reach = std::max(outer_face(pier, 0), outer_face(pier, pier.height));
        return around_box(pier.origin, pier.axis(), reach, pier.half_width);
    }
    case SectionRole::hole:
        break;
    }
    const OpeningForm& opening = building.openings[index];
    const DomeForm* dome = find_dome(building, opening.in);
    const TunnelForm* tunnel = find_tunnel(building, opening.in);
    return around_box(opening.origin, opening.axis,
                      (dome ? largest_radius(*dome) : tunnel->reach) + beside, opening.half_width);
}

std::vector<bool> WallZones::around(const std::vector<int>& faces) const {
    std::vector<bool> wanted(terms_.size(), false);
    for (const int face : faces) {
        const PlanBounds bounds = bounds_of(faces_[face].tag);
        for (std::size_t i = 0; i < terms_.size(); ++i)
            if (terms_[i].meets(bounds))
                wanted[i] = true;
    }
    return wanted;
}

std::vector<int> WallZones::changed_at(double z) const {
    std::vector<int> faces;
    for (auto end = std::lower_bound(ends_.begin(), ends_.end(), std::pair(z - height_tie, -1));
         end != ends_.end() && end->first <= z + height_tie; ++end)
        faces.push_back(end->second);
    return faces;
}

} // namespace coilwright
