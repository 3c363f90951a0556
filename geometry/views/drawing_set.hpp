// All drawings of a building: its views, and the sheets that they are laid on.
#pragma once

#include "geometry/plan/plan_building.hpp"
#include "geometry/solids/solid_model.hpp"
#include "geometry/views/drawing_sheet.hpp"
#include "geometry/views/model_space.hpp"
#include "geometry/views/plan_views.hpp"

#include <optional>
#include <vector>

namespace coilwright {

struct DrawingOptions {
    double plan_height = usual_plan_height;
    std::optional<Bearing> section_bearing; // default: through the main door
};

/// The walls as one mesh, of all parts of a shell model.
EdgedMesh whole_shell(const SolidModel& shell);

/// Views in the order of their sheets: floor plan, foundation, roof, sections A and B, elevations
/// from the south, east, north and west, details. Precondition: plan.sound().
struct DrawingViews {
    View floor, foundation, roof;
    std::vector<View> sections, elevations, details, bonds;
    std::vector<const View*> all() const;
};
DrawingViews drawing_views(const BuildingPlan& plan, const EdgedMesh& shell, double tolerance,
                           const DrawingOptions& options);

/// The sheets, numbered. `drafting.paper` is that of the sheets. With a scale each plan, section
/// and elevation is drawn at it, on as many tiles as it takes, a key of them before; details keep
/// to one sheet.
std::vector<Sheet> drawing_set(const Drafting& drafting, const DrawingViews& views,
                               const std::optional<Scale>& tiled_at = {});

/// All views for a CAD file: plans, sections, elevations and details in a row each, texts and
/// dimensions sized for the scale of the floor plan's sheet. The views must outlive what is
/// returned.
ModelSpace drawing_space(const Drafting& drafting, const DrawingViews& views);

} // namespace coilwright
