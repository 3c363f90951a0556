#include "geometry/plan/tunnel_headroom.hpp"

#include "geometry/plan/building_rooms.hpp"
#include "geometry/plan/headroom.hpp"

#include <algorithm>
#include <cmath>

namespace coilwright {

double clear_height_at(const TunnelForm& form, double inside_plaster, double across) {
    const double d = std::abs(across);
    if (d >= form.profile.half_span - inside_plaster)
        return 0;
    return std::max(0.0,
                    std::min(form.ceiling() - inside_plaster,
                             form.springline + offset_height_at(form.profile, inside_plaster, d)));
}

double clear_width_at(const TunnelForm& form, double inside_plaster, double height) {
    if (height > form.ceiling() - inside_plaster)
        return 0;
    const double half =
        height <= 0 ? form.profile.half_span - inside_plaster
                    : offset_half_width(form.profile, inside_plaster, height - form.springline);
    return 2 * std::max(0.0, half);
}

namespace {

/// What a disc about the pole takes of a strip from there: the integral of sqrt(r^2 - y^2) over |y|
/// < half.
double taken_by_disc(double r, double half) {
    const double y = std::min(r, half);
    return y <= 0 ? 0 : y * std::sqrt(std::max(0.0, r * r - y * y)) + r * r * std::asin(y / r);
}

} // namespace

double floor_area_at(const BuildingForm& building, const TunnelForm& form, double inside_plaster,
                     double height) {
    const double half = clear_width_at(form, inside_plaster, height) / 2;
    double area = 2 * half * tunnel_room_end(form, inside_plaster);
    for (const std::string& id : {form.from, form.to})
        if (const DomeForm* dome = find_dome(building, id))
            area -= taken_by_disc(room_radius(form, *dome, inside_plaster, height), half);
    return std::max(0.0, area);
}

std::vector<TunnelHeadroom> tunnel_headroom(const Design& design, const Schedule& schedule) {
    const double plaster = design.finish.inside_plaster;
    std::vector<TunnelHeadroom> tunnels;
    for (const TunnelForm& form : schedule.building.tunnels) {
        TunnelHeadroom room;
        room.tunnel = form.id;
        room.at_middle = clear_height_at(form, plaster, 0);
        room.width = clear_width_at(form, plaster, 0);
        room.length = tunnel_room_end(form, plaster);
        for (const std::string& id : {form.from, form.to})
            if (const DomeForm* dome = find_dome(schedule.building, id))
                room.length -= room_radius(form, *dome, plaster, 0);
        room.floor_area = floor_area_at(schedule.building, form, plaster, 0);
        for (const double height : shown_heights)
            room.rows.push_back({height, clear_width_at(form, plaster, height),
                                 floor_area_at(schedule.building, form, plaster, height)});
        tunnels.push_back(std::move(room));
    }
    return tunnels;
}

} // namespace coilwright
