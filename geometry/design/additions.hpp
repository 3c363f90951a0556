// What stands beside a dome, as the design file states it: tunnels, buttresses, joins, sleeves.
#pragma once

#include "geometry/design/domes.hpp"
#include "geometry/design/openings.hpp"

#include <optional>
#include <string>
#include <vector>

namespace coilwright {

/// [tunnel.NAME]
struct Tunnel {
    std::string id;
    SourcePlace place;
    std::string from, to; // dome ids; `to` empty when `reach` is given
    Bearing bearing;
    double width = 0, springline = 0;
    ProfileSpec profile;
    std::optional<double> reach;
    bool end_wall = false;   // end = "wall"
    bool wall_stays = false; // wall = "stays"
    std::string tube;
    bool sound = true;
};

/// [buttress.NAME]
struct Buttress {
    std::string id;
    SourcePlace place;
    std::string on;
    std::vector<double> bearings; // as written, or made from count and first
    std::string beside;           // id of the opening or tunnel it flanks
    double gap = 0;
    std::optional<double> width;
    double height = 0, projection = 0;
    std::optional<double> projection_top;
    bool sound = true;
};

/// [join.NAME]
struct Join {
    std::string id;
    SourcePlace place;
    std::string first, second; // dome ids
    std::string keep;          // id of the dome whose wall stays, or empty: "neither"
    bool bonded = true; // with a wall that stays: the other's rings run into it on even courses
    bool sound = true;
};

/// [sleeve.NAME]
struct Sleeve {
    std::string id;
    SourcePlace place;
    std::string in;
    SourcePlace in_place;
    Bearing bearing; // in a tunnel: square to its axis
    SourcePlace bearing_place;
    double height = 0; // of its centre above the floor
    SourcePlace height_place;
    double diameter = 0;
    TunnelSide side = TunnelSide::left; // in a tunnel
    double along = 0;                   // in a tunnel: from the dome's centre along the axis
    SourcePlace along_place;
    bool sound = true;
};

/// [context.NAME]: what stands in or about the building and is no part of it: furniture, a
/// person, the site. The shape is an OBJ file's; whoever calls reads it.
struct ContextObject {
    std::string id;
    SourcePlace place;
    std::string file; // as written: beside the design file
    SourcePlace file_place;
    Vec2 at{0, 0};     // where the file's own origin stands
    double base = 0;   // and how high above the floor
    Bearing bearing;   // where the file's +y (its -z, if y is up) points
    double metres = 1; // of one unit of the file, its scale included
    bool y_up = false; // in the file
    bool sound = true;
};

} // namespace coilwright
