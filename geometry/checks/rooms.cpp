#include "geometry/checks/rooms.hpp"

#include <algorithm>

namespace coilwright {

namespace {

std::size_t at(int i) {
    return static_cast<std::size_t>(i);
}

} // namespace

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
