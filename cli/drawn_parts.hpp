// The parts of the package that are drawn: drawings, pictures, templates.
#pragma once

#include "cli/package.hpp"
#include "geometry/views/mesh_edges.hpp"

namespace coilwright {

/// drawings.pdf, drawings.dxf and the pictures of lines. `shell` is the walls as one mesh.
Package drawing_files(const BuildingPlan& plan, const PackageOptions& options,
                      const EdgedMesh& shell);

/// pictures/view.png: the finished building, shaded.
Package shaded_files(const BuildingPlan& plan, const SolidModel& finished,
                     const PackageOptions& options);

/// forms.dxf and forms.pdf.
Package template_files(const BuildingPlan& plan, const PackageOptions& options);

} // namespace coilwright
