#include "geometry/plan/building_form.hpp"

#include "geometry/plan/reveal_form.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <set>

namespace coilwright {

namespace {

void place_in_tunnel(OpeningForm& form, const Opening& opening, const TunnelForm& tunnel) {
    const Vec2 axis = tunnel.axis();
    form.origin = tunnel.origin;
    form.axis = axis;
    form.in_tunnel = true;
    form.side = opening.side;
    form.along = opening.along;
    if (opening.side == TunnelSide::end)
        return;
    form.origin = tunnel.origin + opening.along * axis;
    form.axis = opening.side == TunnelSide::right ? right_of(tunnel.bearing)
                                                  : Vec2(-right_of(tunnel.bearing));
}

/// None where it is in nothing that can be laid.
std::optional<SleeveForm> make_sleeve_form(const Sleeve& sleeve, const BuildingForm& building) {
    SleeveForm form;
    form.id = sleeve.id;
    form.in = sleeve.in;
    form.bearing = sleeve.bearing;
    form.height = sleeve.height;
    form.diameter = sleeve.diameter;
    if (const DomeForm* dome = find_dome(building, sleeve.in)) {
        form.origin = dome->at;
        return form;
    }
    const TunnelForm* tunnel = find_tunnel(building, sleeve.in);
    if (!tunnel)
        return std::nullopt;
    form.in_tunnel = true;
    form.side = sleeve.side;
    form.along = sleeve.along;
    form.origin = tunnel->origin + sleeve.along * tunnel->axis();
    return form;
}

template <typename Form>
const Form* find_form(const std::vector<Form>& forms, const std::string& id) {
    const auto found =
        std::find_if(forms.begin(), forms.end(), [&](const Form& form) { return form.id == id; });
    return found == forms.end() ? nullptr : &*found;
}

bool usable(const Design& design, const std::string& tube) {
    const TubeType* type = find_tube(design, tube);
    return type && type->sound;
}

} // namespace

const ButtressForm* find_reveal(const BuildingForm& building, const std::string& opening,
                                double z) {
    for (const ButtressForm& pier : building.buttresses)
        if (pier.reveal && pier.reveal->opening.id == opening && z >= pier.bottom - height_tie &&
            z < pier.top - height_tie)
            return &pier;
    return nullptr;
}
const DomeForm* find_dome(const BuildingForm& building, const std::string& id) {
    return find_form(building.domes, id);
}
const TunnelForm* find_tunnel(const BuildingForm& building, const std::string& id) {
    return find_form(building.tunnels, id);
}

WallBand wall_of(const SleeveForm& sleeve, const BuildingForm& building, double z) {
    if (const TunnelForm* tunnel = find_tunnel(building, sleeve.in))
        return {inner_half_width(*tunnel, z), outer_half_width(*tunnel, z)};
    const DomeForm& dome = *find_dome(building, sleeve.in);
    return {inside_radius(dome, z), outside_radius(dome, z)};
}

BuildingForm make_building_form(const Design& design) {
    BuildingForm building;
    if (!design.course.sound)
        return building;
    for (const Dome& dome : design.domes) {
        const bool to_fit = dome.fit_springline || dome.fit_diameter || dome.profile.fit_rise;
        if (!dome.sound || to_fit || !usable(design, dome.tube))
            continue;
        const DomeForm form = make_dome_form(design, dome);
        if (form.last_ring > 0)
            building.domes.push_back(form);
    }
    for (const Tunnel& tunnel : design.tunnels)
        if (tunnel.sound && usable(design, tunnel.tube) && find_dome(building, tunnel.from) &&
            (tunnel.to.empty() || find_dome(building, tunnel.to)))
            building.tunnels.push_back(make_tunnel_form(design, tunnel));
    for (const Buttress& buttress : design.buttresses)
        if (const DomeForm* dome = buttress.sound ? find_dome(building, buttress.on) : nullptr) {
            const auto piers = make_buttress_forms(design, buttress, *dome);
            building.buttresses.insert(building.buttresses.end(), piers.begin(), piers.end());
        }
    for (const Opening& opening : design.openings) {
        if (!opening.sound)
            continue;
        OpeningForm form = make_opening_form(opening);
        double tube_width = 0;
        if (const DomeForm* dome = find_dome(building, opening.in)) {
            form.origin = dome->at;
            tube_width = ring_width(*dome, form.springing); // its bags are of that course's tube
        } else if (const TunnelForm* tunnel = find_tunnel(building, opening.in)) {
            place_in_tunnel(form, opening, *tunnel);
            tube_width = tunnel->width;
        } else {
            continue;
        }
        if (opening.head.laid == HeadLaid::fan)
            form.fan_depth = opening.head.depth.value_or(tube_width);
        building.openings.push_back(form);
        if (const DomeForm* dome = find_dome(building, opening.in);
            dome && opening.reveal_plumb && can_have_reveal(form))
            if (auto reveal = make_reveal(form, *dome))
                building.buttresses.push_back(std::move(*reveal));
    }
    for (const Sleeve& sleeve : design.sleeves)
        if (const std::optional<SleeveForm> form =
                sleeve.sound ? make_sleeve_form(sleeve, building) : std::nullopt)
            building.sleeves.push_back(*form);
    for (const Join& join : design.joins)
        if (join.sound && find_dome(building, join.first) && find_dome(building, join.second))
            building.joins.push_back({join.id, join.first, join.second, join.keep, join.bonded});
    return building;
}

JoinEffect join_effect(const BuildingForm& building, const std::string& dome,
                       const std::string& other) {
    for (const JoinForm& join : building.joins) {
        if (!((join.first == dome && join.second == other) ||
              (join.first == other && join.second == dome)))
            continue;
        if (join.keep.empty())
            return JoinEffect::opens_to_room;
        return join.keep == other ? JoinEffect::stops_at_wall : JoinEffect::none;
    }
    return JoinEffect::none;
}

namespace {

/// Places of forms in their list by their ids.
class Places {
public:
    template <typename Form>
    explicit Places(const std::vector<Form>& forms) {
        for (std::size_t i = 0; i < forms.size(); ++i)
            places_.emplace(forms[i].id, static_cast<int>(i));
    }
    /// -1: none of that id.
    int of(const std::string& id) const {
        const auto found = places_.find(id);
        return found == places_.end() ? -1 : found->second;
    }

private:
    std::map<std::string, int> places_;
};

/// Lists by the place in one list what names it.
template <typename Form, typename Key>
std::vector<std::vector<int>> listed_by(const Places& places, std::size_t count,
                                        const std::vector<Form>& forms, Key key) {
    std::vector<std::vector<int>> lists(count);
    for (std::size_t i = 0; i < forms.size(); ++i)
        if (const int place = places.of(key(forms[i])); place >= 0)
            lists[static_cast<std::size_t>(place)].push_back(static_cast<int>(i));
    return lists;
}

} // namespace

WallRelations make_relations(const BuildingForm& building) {
    const Places domes(building.domes), tunnels(building.tunnels);
    const std::size_t dome_count = building.domes.size();
    WallRelations relations;
    relations.joins.resize(dome_count);
    relations.stopped_at.resize(dome_count);
    std::set<std::pair<int, int>> known;
    for (const JoinForm& join : building.joins) {
        const int first = domes.of(join.first), second = domes.of(join.second);
        if (first < 0 || second < 0 || first == second || !known.insert({first, second}).second ||
            !known.insert({second, first}).second)
            continue;
        for (const auto& [one, other] : {std::pair{first, second}, {second, first}}) {
            const std::string& keep = join.keep;
            const std::string& other_id = building.domes[static_cast<std::size_t>(other)].id;
            if (keep.empty()) {
                relations.joins[static_cast<std::size_t>(one)].push_back(
                    {other, JoinEffect::opens_to_room});
            } else if (keep == other_id) {
                relations.joins[static_cast<std::size_t>(one)].push_back(
                    {other, JoinEffect::stops_at_wall});
                relations.stopped_at[static_cast<std::size_t>(other)].push_back(one);
            }
        }
    }
    for (auto& joins : relations.joins)
        std::sort(joins.begin(), joins.end(),
                  [](const auto& a, const auto& b) { return a.dome < b.dome; });
    for (auto& stopped : relations.stopped_at)
        std::sort(stopped.begin(), stopped.end());
    relations.dome_tunnels.resize(dome_count);
    for (std::size_t i = 0; i < building.tunnels.size(); ++i) {
        const int from = domes.of(building.tunnels[i].from), to = domes.of(building.tunnels[i].to);
        relations.tunnel_domes.emplace_back(from, to);
        for (const int dome : {from, to == from ? -1 : to})
            if (dome >= 0)
                relations.dome_tunnels[static_cast<std::size_t>(dome)].push_back(
                    static_cast<int>(i));
    }
    for (const ButtressForm& pier : building.buttresses)
        relations.pier_domes.push_back(domes.of(pier.dome));
    const auto in = [](const auto& form) { return form.in; };
    relations.dome_piers = listed_by(domes, dome_count, building.buttresses,
                                     [](const ButtressForm& pier) { return pier.dome; });
    relations.dome_openings = listed_by(domes, dome_count, building.openings, in);
    relations.dome_sleeves = listed_by(domes, dome_count, building.sleeves, in);
    relations.tunnel_openings = listed_by(tunnels, building.tunnels.size(), building.openings, in);
    relations.tunnel_sleeves = listed_by(tunnels, building.tunnels.size(), building.sleeves, in);
    return relations;
}

int course_count(const BuildingForm& building) {
    int count = 0;
    for (const DomeForm& dome : building.domes)
        count = std::max(count, dome.courses());
    for (const TunnelForm& tunnel : building.tunnels)
        count = std::max(count, tunnel.side_courses + tunnel.crown_courses);
    return count;
}

} // namespace coilwright
