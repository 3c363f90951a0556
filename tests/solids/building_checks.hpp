// What the shell of every building must be, held to the exact plan regions of its wall.
#pragma once

#include "geometry/plan/building_form.hpp"
#include "geometry/solids/building_shell.hpp"

namespace coilwright::testing {

/// How far a section at a height may lie off that of the true surface, metres: a face within the
/// tolerance of a surface that leans by an angle lies off by the tolerance over its cosine, here
/// taken for the flattest dome about that height, and for 60 degrees at the least.
double section_bound(const BuildingForm& building, double tolerance, double z);

/// Area of a section of a mesh at a height at which it has no horizontal face, m2.
double slice_area(const Mesh& mesh, double z);

/// Volume by quadrature over height of the exact plan areas between the heights where they change.
double volume_by_areas(const BuildingForm& building);

/// Genus by Euler's formula, of a closed mesh in one piece: how many handles it has.
int genus(const Mesh& mesh);

/// A solid in one piece at single precision, no angle of a triangle under so many degrees.
void check_solid(const Mesh& mesh, double least_angle);

/// Meshes a part of a building and checks it: a solid in one piece at single precision, angles over
/// `least_angle` degrees, volume and the sections at every course's middle within the tolerance's
/// bound of the exact areas. Returns the mesh.
BuildingShell checked_shell(const BuildingForm& building, double tolerance, double least_angle);

} // namespace coilwright::testing
