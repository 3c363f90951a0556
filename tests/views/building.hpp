// Demo buildings with their walls as meshes, ready to draw.
#pragma once

#include "exporters/pdf.hpp"
#include "geometry/views/drawing_set.hpp"
#include "tests/drawing/plans.hpp"

#include <catch2/catch.hpp>

namespace coilwright::testing {

inline const std::vector<std::string>& demo_names() {
    static const std::vector<std::string> names{"grain-store", "cabin-metric", "washroom",
                                                "workshop",    "square-door",  "home",
                                                "retreat",     "seed-house"};
    return names;
}

struct DrawnBuilding {
    BuildingPlan plan;
    EdgedMesh shell;
    DrawingViews views;
};

inline DrawnBuilding drawn(BuildingPlan plan, const DrawingOptions& options = {}) {
    DrawnBuilding made;
    made.plan = std::move(plan);
    const SolidResult shell = shell_model(made.plan.schedule, default_tolerance);
    REQUIRE(shell.faults.empty());
    made.shell = whole_shell(shell.model);
    made.views = drawing_views(made.plan, made.shell, default_tolerance, options);
    return made;
}

} // namespace coilwright::testing
