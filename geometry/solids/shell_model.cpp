#include "geometry/base/slug.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/solid_model.hpp"

#include <algorithm>
#include <map>
#include <numeric>

namespace coilwright {

namespace {

SolidFault told(ShapeFault fault, const std::string& first, const std::string& second) {
    return {first, second, fault_text(fault, first, second)};
}

/// An element a piece of which hangs together with nothing else.
std::string loose_element(const BuildingShell& shell) {
    const Mesh& mesh = shell.mesh;
    std::vector<std::uint32_t> root(mesh.vertices.size());
    std::iota(root.begin(), root.end(), 0U);
    const auto find = [&](std::uint32_t v) {
        while (root[v] != v)
            v = root[v] = root[root[v]];
        return v;
    };
    for (const auto& [a, b, c] : mesh.triangles)
        for (const std::uint32_t other : {b, c}) {
            const std::uint32_t u = find(a), v = find(other);
            root[std::max(u, v)] = std::min(u, v);
        }
    std::map<std::uint32_t, std::pair<int, std::uint32_t>> pieces; // triangles, the first of them
    for (std::uint32_t t = 0; t < mesh.triangles.size(); ++t)
        ++pieces.try_emplace(find(mesh.triangles[t][0]), 0, t).first->second.first;
    const auto smallest =
        std::min_element(pieces.begin(), pieces.end(),
                         [](const auto& a, const auto& b) { return a.second < b.second; });
    return owner_of(shell, smallest->second.second);
}

std::optional<SolidFault> disproof(const BuildingShell& shell, const std::string& dome) {
    const MeshCheck check = check_mesh(shell.mesh, true);
    if (check.solid() && check.components == 1)
        return {};
    if (check.solid())
        return told(ShapeFault::apart, loose_element(shell), dome);
    if (shell.close_in_height)
        return told(ShapeFault::close_in_height, shell.close_in_height->first,
                    shell.close_in_height->second);
    if (check.crossing)
        return told(ShapeFault::crossing, owner_of(shell, check.crossing->first),
                    owner_of(shell, check.crossing->second));
    return told(ShapeFault::not_proven, dome, dome);
}

/// A part as a proven solid, or why it is none. Curves and faces that the tolerance brings together
/// are tried again with a finer one.
std::optional<SolidFault> mesh_part(const BuildingPart& part, double tolerance, Mesh& mesh) {
    std::optional<SolidFault> fault;
    for (int finer = 0; finer < 3; ++finer, tolerance /= 4) {
        BuildingShell shell = mesh_building_shell(part.building, tolerance);
        bool crossing = shell.fault && shell.fault->kind == ShapeFault::crossing;
        if (shell.fault) {
            fault = told(shell.fault->kind, shell.fault->first, shell.fault->second);
        } else {
            place(shell.mesh, part);
            fault = disproof(shell, "dome." + part.building.domes.front().id);
            crossing = fault.has_value();
        }
        if (!fault)
            mesh = std::move(shell.mesh);
        if (!crossing)
            break;
    }
    return fault;
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
        Mesh mesh;
        if (const auto fault = mesh_part(part, tolerance, mesh)) {
            result.faults.push_back(*fault);
            continue;
        }
        SolidPart solid;
        solid.slug = slugs.unique(first);
        solid.title = title_of(part.building);
        solid.volume = volume(mesh);
        solid.mesh = std::move(mesh);
        result.model.parts.push_back(std::move(solid));
    }
    return result;
}

} // namespace coilwright
