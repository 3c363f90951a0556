// A building taken apart into what stands by itself, each part in a frame of its own.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/mesh.hpp"

#include <vector>

namespace coilwright {

/// Elements that hang together: domes joined, the tunnels between them, their buttresses and
/// openings. The frame's origin is the pole of the first dome, x along the axis of the first
/// opening, or else of the first tunnel, buttress or pair of domes; lengths are rounded to 1e-10 m
/// and directions to 1e-9 degrees, so that turning or moving a design changes nothing in its parts.
struct BuildingPart {
    BuildingForm building; // in the part's frame
    Vec2 origin{0, 0};     // of the frame, in the design's
    Bearing axis;          // direction of its x axis
};

/// The parts in the order of their first domes.
std::vector<BuildingPart> building_parts(const BuildingForm& building);

/// Moves a mesh from the part's frame to the design's (x east, y north).
void place(Mesh& mesh, const BuildingPart& part);

} // namespace coilwright
