#include "geometry/base/slug.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/solid_model.hpp"

#include <algorithm>

namespace coilwright {

namespace {

SolidFault told(ShapeFault fault, const std::string& first, const std::string& second) {
    return {first, second, fault_text(fault, first, second)};
}

/// Curves that the tolerance brings together are tried again with a finer one.
BuildingShell mesh_with_care(const BuildingForm& building, double tolerance) {
    BuildingShell shell = mesh_building_shell(building, tolerance);
    for (int finer = 0; finer < 2 && shell.fault && shell.fault->kind == ShapeFault::crossing;
         ++finer)
        shell = mesh_building_shell(building, tolerance /= 4);
    return shell;
}

std::optional<SolidFault> disproof(const BuildingShell& shell, const std::string& dome) {
    const MeshCheck check = check_mesh(shell.mesh, true);
    if (check.solid() && check.components == 1)
        return {};
    if (check.crossing)
        return told(ShapeFault::crossing, owner_of(shell, check.crossing->first),
                    owner_of(shell, check.crossing->second));
    return told(ShapeFault::not_proven, dome, dome);
}

/// "Wall of big", "Wall of big and bath", "Wall of bath, big and north".
std::string title_of(const BuildingForm& building) {
    std::string title = "Wall of " + building.domes.front().id;
    for (std::size_t i = 1; i < building.domes.size(); ++i)
        title += (i + 1 < building.domes.size() ? ", " : " and ") + building.domes[i].id;
    return title;
}

} // namespace

SolidResult shell_model(const Schedule& schedule, double tolerance) {
    SolidResult result;
    result.model.name = schedule.name;
    if (!tolerance_in_bounds(tolerance)) {
        result.faults.push_back(told(ShapeFault::tolerance, {}, {}));
        return result;
    }
    SlugTable slugs;
    for (const BuildingPart& part : building_parts(schedule.building)) {
        const std::string& first = part.building.domes.front().id;
        BuildingShell shell = mesh_with_care(part.building, tolerance);
        if (shell.fault) {
            result.faults.push_back(
                told(shell.fault->kind, shell.fault->first, shell.fault->second));
            continue;
        }
        place(shell.mesh, part);
        if (const auto fault = disproof(shell, "dome." + first)) {
            result.faults.push_back(*fault);
            continue;
        }
        SolidPart solid;
        solid.slug = slugs.unique(first);
        solid.title = title_of(part.building);
        solid.volume = volume(shell.mesh);
        solid.mesh = std::move(shell.mesh);
        result.model.parts.push_back(std::move(solid));
    }
    return result;
}

} // namespace coilwright
