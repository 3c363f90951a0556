// The wall of one dome with its openings as one closed mesh.
#pragma once

#include "geometry/plan/wall_form.hpp"
#include "geometry/solids/patch.hpp"

#include <vector>

namespace coilwright {

/// The mesh and, by the number of the first triangle of each, whose surface a triangle belongs to.
struct DomeShell {
    Mesh mesh;
    std::vector<std::pair<std::uint32_t, std::string>> owners;
    std::optional<PatchFault> fault; // the mesh is then of no use
};

/// Meshes the wall in the dome's own frame: the pole's foot at the origin, x along the datum, z up
/// from the floor. Facets and chords lie within the tolerance of inside_radius, outside_radius and
/// the openings' outlines. Preconditions: the form has a ring; check_layout found no fault. Fails
/// where an opening is as wide as the room, reaches the room's ceiling, or touches another.
DomeShell mesh_dome_shell(const DomeForm& form, const std::vector<OpeningForm>& openings,
                          double tolerance);

/// Element that the triangle belongs to: "dome.vault", "opening.door".
std::string owner_of(const DomeShell& shell, std::uint32_t triangle);

} // namespace coilwright
