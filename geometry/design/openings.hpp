// Openings in domes and tunnels, as the design file states them.
#pragma once

#include "geometry/base/bearing.hpp"
#include "geometry/base/diagnostic.hpp"

#include <optional>
#include <string>

namespace coilwright {

enum class OpeningUse { door, window, vent, niche };
enum class HeadKind { square, pointed, round, segmental, circle };
enum class HeadLaid { corbelled, fan };
enum class LintelKind { timber, concrete };
/// A square head's beam. It lies on the joint at the head and spans the width and a bearing each
/// side.
struct LintelSpec {
    SourcePlace place;
    LintelKind kind = LintelKind::timber;
    double bearing = 0.3048;     // on each side, 12 in
    std::optional<double> depth; // its height; default one course
    std::optional<double> width; // across the wall; default the tamped width less a course height
};
struct HeadSpec {
    SourcePlace place;
    HeadKind kind = HeadKind::square;
    std::optional<double> rise; // pointed (default width * sqrt 3 / 2), segmental (required)
    HeadLaid laid = HeadLaid::corbelled;
    std::optional<double> depth;      // fan: depth of its bags; default one tamped width
    std::optional<LintelSpec> lintel; // square heads; none: the design gives none
};

/// Which wall of a tunnel an opening stands in, left and right as seen walking away from its dome.
enum class TunnelSide { end, left, right };

/// [opening.NAME]; width, sill and height are of the rough hole between the tubes.
struct Opening {
    std::string id;
    SourcePlace place;
    std::string in; // id of a dome (or a tunnel)
    SourcePlace in_place;
    OpeningUse use = OpeningUse::window;
    Bearing bearing;
    SourcePlace bearing_place;
    double width = 0;
    SourcePlace width_place;
    double sill = 0; // above the floor
    SourcePlace sill_place;
    double height = 0; // from sill to the top of the head
    SourcePlace height_place;
    HeadSpec head;
    double frame = 0.0381;       // thickness of the frame on each side, 1-1/2 in
    double frame_depth = 0.1143; // 4-1/2 in
    bool reveal_plumb = false;   // reveal = "plumb": jambs built out to the base ring's outside
    TunnelSide side = TunnelSide::end; // in a tunnel
    double along = 0; // in a tunnel's side: its axis, from the dome's centre along the tunnel
    SourcePlace along_place;
    std::optional<double> niche_depth; // use = "niche": `depth`, from the inside face
    SourcePlace niche_depth_place;
    bool sound = true;
    bool itself_sound = true; // as `sound`, whatever the faults of what it is in
};

} // namespace coilwright
