// Advice on pieces that are hard to lay: shorter than a tube is wide, between two cuts.
#pragma once

#include "geometry/plan/schedule.hpp"

#include <vector>

namespace coilwright {

/// A run or a wedge between two cuts, or a tube of a built-out jamb, that is shorter than its tube
/// is wide.
struct ShortPiece {
    int course = 0;
    std::string element;          // dome, tunnel, or the opening whose jamb is built out
    std::string id;               // "T3", "S2", "W1"
    std::string start_by, end_by; // of a jamb: the dome, and nothing
    double length = 0;            // along the centreline
    double width = 0;             // of its tube, tamped
};

/// Course by course, rings before straights. Of buttresses only built-out jambs.
std::vector<ShortPiece> short_pieces(const Schedule& schedule);

/// `short-pieces`: one advice for each dome, tunnel and opening that has some, with course and
/// piece, and what to do with them.
std::vector<Finding> short_piece_findings(const Design& design, const Schedule& schedule);

} // namespace coilwright
