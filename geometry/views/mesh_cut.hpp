// A solid cut by a plane: the outlines of the cut face, circular where the building is.
#pragma once

#include "geometry/plan/wall_form.hpp"
#include "geometry/views/seen_edges.hpp"
#include "geometry/views/view.hpp"

namespace coilwright {

/// Closed outlines of the mesh in the plane at a depth (along toward), in the view's frame,
/// even-odd. Within the mesh's tolerance of the true section.
std::vector<std::vector<Vec2>> mesh_cut(const Mesh& mesh, const SightFrame& frame, double depth);

/// Lines less what the cut face hides: what lies within its loops, even-odd. What is seen of a
/// solid from within, through the face, is not seen.
std::vector<SeenLine> before_cut_face(const std::vector<SeenLine>& lines,
                                      const std::vector<std::vector<Vec2>>& loops);

/// A circle that a cut may run along, above a height, on one side of a line.
struct CutCircle {
    Vec2 centre{0, 0};
    double radius = 0;
    double above = 0; // points lower than this are not on it
};
/// Both faces of a dome with a pointed or round profile that is cut through its pole: the inside
/// circles, and the outside ones w beyond. None of other profiles.
std::vector<CutCircle> circles_of(const DomeForm& dome, double pole);

/// The outline with its runs along a circle (within `slack`) as arcs of that circle, and points on
/// straight lines left out.
Outline with_arcs(const std::vector<Vec2>& loop, const std::vector<CutCircle>& circles,
                  double slack);

} // namespace coilwright
