// The wall of a building, or of a part of one that stands by itself, as one closed mesh.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/patch.hpp"

#include <string>
#include <utility>
#include <vector>

namespace coilwright {

/// Where the triangles of one face start, and which it is.
struct ShellFace {
    std::uint32_t first = 0; // triangle
    int face = -1;           // of WallFaces; -1: horizontal
    bool back = false;       // the wall lies outside the shape: its surface is the face's back
    bool under = false;      // of a horizontal one: seen from below
    double z = 0;
    std::string element; // "dome.vault"
};

/// The mesh and, by the number of the first triangle of each, whose surface a triangle belongs to.
struct BuildingShell {
    Mesh mesh;
    std::vector<std::pair<std::uint32_t, std::string>> owners;
    std::vector<ShellFace> faces;    // in the order of their triangles
    std::optional<PatchFault> fault; // the mesh is then of no use
    // Elements with two events within 10 micrometres of height: the first suspects of a bad mesh.
    std::optional<std::pair<std::string, std::string>> close_in_height;
};

/// Meshes the wall of wall_expression at all heights: every side of every shape in plan sweeps a
/// face; faces meet in curves that the corners of the plan sweep, and end on pieces of the levels
/// at which the plan changes. Facets and chords lie within the tolerance of the faces.
/// Precondition: the building has a dome; check_layout found no fault.
BuildingShell mesh_building_shell(const BuildingForm& building, double tolerance);

/// Element that the triangle belongs to: "dome.vault", "opening.door".
std::string owner_of(const BuildingShell& shell, std::uint32_t triangle);

} // namespace coilwright
