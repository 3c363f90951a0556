#include "geometry/design/contradictions.hpp"
#include "geometry/design/read_tables.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr double same_bearing = 1; // degrees

/// What an opening and a sleeve have in common: a place in the wall of a dome or a tunnel.
struct Placed {
    std::string path;
    const std::string& in;
    TunnelSide side;
    Bearing& bearing;
    bool may_stand_in_end; // of a tunnel
};

class HostCheck {
public:
    HostCheck(const Design& design, ReadContext& context) : design_(design), context_(context) {}

    void check(const Placed& placed) {
        if (const Tunnel* tunnel = find_tunnel(design_, placed.in))
            check_in_tunnel(placed, *tunnel);
        else if (find_dome(design_, placed.in))
            check_in_dome(placed);
    }

private:
    const Design& design_;
    ReadContext& context_;

    static std::string key(const Placed& placed, const char* name) {
        return placed.path + "." + name;
    }
    bool has(const Placed& placed, const char* name) const {
        return context_.has_place(key(placed, name));
    }
    /// Left out, and no slip of the pen either.
    bool lacks(const Placed& placed, const char* name) const {
        return !has(placed, name) && context_.misspelt.count(key(placed, name)) == 0;
    }

    void check_in_dome(const Placed& placed) {
        for (const char* name : {"side", "along"})
            if (has(placed, name))
                context_.add(faults::key_out_of_place(
                    context_.at(key(placed, name)), "in = \"" + placed.in + "\"",
                    "only in the wall of a tunnel", "bearing = 150"));
        if (lacks(placed, "bearing"))
            context_.add(faults::missing_key(
                context_.at(key(placed, "bearing")),
                "a number of degrees clockwise from north, -360 to 360", "150"));
    }

    void check_in_tunnel(const Placed& placed, const Tunnel& tunnel) {
        if (context_.is_faulty(key(placed, "side")))
            return;
        const bool in_end = placed.side == TunnelSide::end;
        if (!placed.may_stand_in_end && (in_end || !has(placed, "side"))) {
            if (has(placed, "side"))
                context_.add(faults::unknown_word(context_.at(key(placed, "side")), "end",
                                                  {"left", "right"}));
            else if (lacks(placed, "side"))
                context_.add(faults::missing_key(context_.at(key(placed, "side")),
                                                 "\"left\" or \"right\", seen walking away from "
                                                 "the tunnel's first dome",
                                                 "\"left\""));
            return;
        }
        if (in_end && has(placed, "along"))
            context_.add(faults::key_out_of_place(
                context_.at(key(placed, "along")), "side = \"end\"",
                "only with side = \"left\" or \"right\"", "side = \"left\""));
        if (!in_end && lacks(placed, "along"))
            context_.add(faults::missing_key(context_.at(key(placed, "along")),
                                             "a length along the tunnel, from the centre of its "
                                             "first dome",
                                             "\"10 ft\""));
        set_bearing(placed, tunnel);
    }

    void set_bearing(const Placed& placed, const Tunnel& tunnel) {
        const double turn = placed.side == TunnelSide::left    ? -90
                            : placed.side == TunnelSide::right ? 90
                                                               : 0;
        const Bearing right = turned(tunnel.bearing, turn);
        const std::string path = key(placed, "bearing");
        const double off = clockwise_degrees(right, placed.bearing);
        if (context_.has_place(path) && !context_.is_faulty(path) &&
            !context_.is_faulty(element_path("tunnel", tunnel.id)) &&
            std::min(off, 360 - off) > same_bearing)
            context_.add(faults::bearing_off_its_tunnel(context_.at(path), tunnel.id,
                                                        placed.bearing.degrees, right.degrees));
        else
            placed.bearing = right;
    }
};

} // namespace

void check_hosts(Design& design, ReadContext& context) {
    HostCheck hosts(design, context);
    for (Opening& opening : design.openings)
        hosts.check(
            {element_path("opening", opening.id), opening.in, opening.side, opening.bearing, true});
    for (Sleeve& sleeve : design.sleeves)
        hosts.check(
            {element_path("sleeve", sleeve.id), sleeve.in, sleeve.side, sleeve.bearing, false});
}

} // namespace coilwright
