// What can be wrong with a shape that is to become a solid, and how it is told.
#pragma once

#include <string>

namespace coilwright {

enum class ShapeFault {
    crossing,      // curves or faces of two elements cut through each other
    touching,      // two elements meet in a point
    open_boundary, // the curves around a face do not close
    too_many_triangles,
    tolerance,       // asked for outside its bounds
    apart,           // a piece of one element hangs together with nothing
    close_in_height, // two elements start, end or meet within 10 micrometres of height, and not at
                     // one
    undecided,       // faces run so close to each other that no arithmetic can tell them apart
    not_proven       // the finished mesh fails its check
};

/// One plain sentence about two elements ("opening.door", "dome.vault"; may be the same).
std::string fault_text(ShapeFault fault, const std::string& first, const std::string& second);

} // namespace coilwright
