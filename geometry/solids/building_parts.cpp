#include "geometry/solids/building_parts.hpp"

#include <cmath>
#include <numeric>

namespace coilwright {

namespace {

/// Numbers of domes that hang together have the same root.
class DomeGroups {
public:
    explicit DomeGroups(std::size_t count) : parent_(count) {
        std::iota(parent_.begin(), parent_.end(), std::size_t{0});
    }
    std::size_t root(std::size_t i) {
        while (parent_[i] != i)
            i = parent_[i] = parent_[parent_[i]];
        return i;
    }
    void join(std::size_t a, std::size_t b) {
        a = root(a), b = root(b);
        parent_[std::max(a, b)] = std::min(a, b);
    }

private:
    std::vector<std::size_t> parent_;
};

double rounded(double value, double per_unit) {
    return std::round(value * per_unit) / per_unit;
}

Bearing bearing_of(const Vec2& way) {
    return to_bearing({std::atan2(way.y(), way.x())});
}

/// A direction that turns with the building, whatever its datum is.
Bearing axis_of(const BuildingForm& building) {
    if (!building.openings.empty())
        return bearing_of(building.openings.front().axis);
    if (!building.tunnels.empty())
        return building.tunnels.front().bearing;
    if (!building.buttresses.empty())
        return building.buttresses.front().bearing;
    if (building.domes.size() > 1)
        return bearing_of(building.domes[1].at - building.domes[0].at);
    return building.domes.front().datum;
}

class Frame {
public:
    explicit Frame(const BuildingPart& part)
        : origin_(part.origin), axis_(part.axis), x_(along(part.axis)), y_(-right_of(part.axis)) {}

    Vec2 place(const Vec2& at) const {
        const Vec2 off = at - origin_;
        return {rounded(off.dot(x_), 1e10), rounded(off.dot(y_), 1e10)};
    }
    Bearing direction(Bearing bearing) const {
        return {turned_into_circle(rounded(bearing.degrees - axis_.degrees, 1e9) + 90)};
    }
    Vec2 direction(const Vec2& axis) const { return along(direction(bearing_of(axis))); }

private:
    Vec2 origin_;
    Bearing axis_;
    Vec2 x_, y_;
};

void take_over(BuildingForm& form, const Frame& frame) {
    for (DomeForm& dome : form.domes) {
        dome.at = frame.place(dome.at);
        dome.datum = frame.direction(dome.datum);
    }
    for (TunnelForm& tunnel : form.tunnels) {
        tunnel.origin = frame.place(tunnel.origin);
        tunnel.bearing = frame.direction(tunnel.bearing);
        tunnel.reach = rounded(tunnel.reach, 1e10);
    }
    for (ButtressForm& pier : form.buttresses) {
        pier.origin = frame.place(pier.origin);
        pier.bearing = frame.direction(pier.bearing);
    }
    for (OpeningForm& opening : form.openings) {
        opening.origin = frame.place(opening.origin);
        opening.axis = frame.direction(opening.axis);
        opening.bearing = frame.direction(opening.bearing);
    }
}

} // namespace

std::vector<BuildingPart> building_parts(const BuildingForm& building) {
    const std::size_t count = building.domes.size();
    const WallRelations relations = make_relations(building);
    DomeGroups groups(count);
    for (std::size_t i = 0; i < count; ++i)
        for (const auto& joined : relations.joins[i])
            groups.join(i, static_cast<std::size_t>(joined.dome));
    for (const auto& [from, to] : relations.tunnel_domes)
        if (from >= 0 && to >= 0)
            groups.join(static_cast<std::size_t>(from), static_cast<std::size_t>(to));

    std::vector<BuildingPart> parts;
    std::vector<std::size_t> part_of(count, 0);
    for (std::size_t i = 0; i < count; ++i) {
        if (groups.root(i) == i) {
            part_of[i] = parts.size();
            parts.emplace_back();
            parts.back().origin = building.domes[i].at;
        }
        part_of[i] = part_of[groups.root(i)];
        parts[part_of[i]].building.domes.push_back(building.domes[i]);
    }
    const auto form_of = [&](std::size_t dome) -> BuildingForm& {
        return parts[part_of[dome]].building;
    };
    for (std::size_t i = 0; i < building.tunnels.size(); ++i)
        if (const int from = relations.tunnel_domes[i].first; from >= 0) {
            BuildingForm& form = form_of(static_cast<std::size_t>(from));
            form.tunnels.push_back(building.tunnels[i]);
            for (const int opening : relations.tunnel_openings[i])
                form.openings.push_back(building.openings[static_cast<std::size_t>(opening)]);
        }
    for (std::size_t i = 0; i < building.buttresses.size(); ++i)
        if (const int dome = relations.pier_domes[i]; dome >= 0)
            form_of(static_cast<std::size_t>(dome)).buttresses.push_back(building.buttresses[i]);
    for (std::size_t i = 0; i < count; ++i)
        for (const int opening : relations.dome_openings[i])
            form_of(i).openings.push_back(building.openings[static_cast<std::size_t>(opening)]);
    for (const JoinForm& join : building.joins)
        for (std::size_t i = 0; i < count; ++i)
            if (building.domes[i].id == join.first)
                form_of(i).joins.push_back(join);
    for (BuildingPart& part : parts) {
        part.axis = axis_of(part.building);
        take_over(part.building, Frame(part));
    }
    return parts;
}

void place(Mesh& mesh, const BuildingPart& part) {
    const Vec2 x = along(part.axis), y = -right_of(part.axis);
    for (Vec3& v : mesh.vertices) {
        const Vec2 plan = part.origin + v.x() * x + v.y() * y;
        v.head<2>() = plan;
    }
}

} // namespace coilwright
