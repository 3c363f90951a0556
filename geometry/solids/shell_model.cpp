#include "geometry/solids/solid_model.hpp"

#include "geometry/base/slug.hpp"
#include "geometry/solids/dome_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/placement.hpp"

namespace coilwright {

namespace {

SolidFault told(ShapeFault fault, const std::string& first, const std::string& second) {
    return {first, second, fault_text(fault, first, second)};
}

/// Curves that the tolerance brings together are tried again with a finer one.
DomeShell mesh_with_care(const DomeForm& form, const std::vector<OpeningForm>& openings,
                         double tolerance) {
    DomeShell shell = mesh_dome_shell(form, openings, tolerance);
    for (int finer = 0; finer < 2 && shell.fault && shell.fault->kind == ShapeFault::crossing;
         ++finer)
        shell = mesh_dome_shell(form, openings, tolerance /= 4);
    return shell;
}

std::optional<SolidFault> disproof(const DomeShell& shell, const std::string& dome) {
    const MeshCheck check = check_mesh(shell.mesh, true);
    if (check.solid() && check.components == 1)
        return {};
    if (check.crossing)
        return told(ShapeFault::crossing, owner_of(shell, check.crossing->first),
                    owner_of(shell, check.crossing->second));
    return told(ShapeFault::not_proven, dome, dome);
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
    for (const DomeForm& form : schedule.building.domes) {
        std::vector<OpeningForm> openings;
        for (const OpeningPlan& opening : schedule.openings)
            if (opening.form.in == form.id)
                openings.push_back(opening.form);
        const std::string name = "dome." + form.id;
        DomeShell shell = mesh_with_care(form, openings, tolerance);
        if (shell.fault) {
            result.faults.push_back(
                told(shell.fault->kind, shell.fault->first, shell.fault->second));
            continue;
        }
        place(shell.mesh, form);
        if (const auto fault = disproof(shell, name)) {
            result.faults.push_back(*fault);
            continue;
        }
        SolidPart part;
        part.slug = slugs.unique(form.id);
        part.title = "Wall of " + form.id;
        part.volume = volume(shell.mesh);
        part.mesh = std::move(shell.mesh);
        result.model.parts.push_back(std::move(part));
    }
    return result;
}

} // namespace coilwright
