#include "tests/support/moved_designs.hpp"

#include <cmath>

namespace coilwright::testing {

namespace {

Vec2 turned_about_origin(const Vec2& at, double degrees) {
    const double angle = -degrees * radians_per_degree; // bearings run clockwise
    return {std::cos(angle) * at.x() - std::sin(angle) * at.y(),
            std::sin(angle) * at.x() + std::cos(angle) * at.y()};
}

/// Every bearing by a function, every dome's place by another. A dome that names no datum has it
/// where the smallest bearing is: that is another element after a turn, so it is named before.
template <typename Turn, typename Move>
Design moved(Design design, Turn turn, Move move) {
    for (Dome& dome : design.domes)
        dome.at = move(dome.at);
    for (Opening& opening : design.openings)
        opening.bearing.degrees = turned_into_circle(turn(opening.bearing.degrees));
    for (Tunnel& tunnel : design.tunnels)
        tunnel.bearing.degrees = turned_into_circle(turn(tunnel.bearing.degrees));
    for (Sleeve& sleeve : design.sleeves)
        sleeve.bearing.degrees = turned_into_circle(turn(sleeve.bearing.degrees));
    for (Buttress& buttress : design.buttresses)
        for (double& bearing : buttress.bearings)
            bearing = turned_into_circle(turn(bearing));
    return design;
}

} // namespace

Design turned_and_moved(const Design& design, double degrees, const Vec2& by) {
    return moved(
        design, [&](double bearing) { return bearing + degrees; },
        [&](const Vec2& at) -> Vec2 { return turned_about_origin(at, degrees) + by; });
}

Design mirrored(const Design& design) {
    Design other = moved(
        design, [](double bearing) { return -bearing; },
        [](const Vec2& at) { return Vec2(-at.x(), at.y()); });
    const auto swap = [](TunnelSide& side) {
        if (side != TunnelSide::end)
            side = side == TunnelSide::left ? TunnelSide::right : TunnelSide::left;
    };
    for (Opening& opening : other.openings)
        swap(opening.side);
    for (Sleeve& sleeve : other.sleeves)
        swap(sleeve.side);
    return other;
}

bool name_datums(Design& design) {
    for (Dome& dome : design.domes) {
        if (!dome.datum.empty())
            continue;
        for (const Opening& opening : design.openings)
            if (opening.in == dome.id)
                dome.datum = opening.id;
        for (const Tunnel& tunnel : design.tunnels)
            if (tunnel.from == dome.id)
                dome.datum = tunnel.id;
        if (dome.datum.empty())
            return false;
    }
    return true;
}

} // namespace coilwright::testing
