#include "geometry/base/slug.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/plan/building_rooms.hpp"
#include "geometry/solids/building_parts.hpp"
#include "geometry/solids/building_shell.hpp"
#include "geometry/solids/mesh_check.hpp"
#include "geometry/solids/opening_bodies.hpp"
#include "geometry/solids/placement.hpp"
#include "geometry/solids/plaster.hpp"
#include "geometry/solids/site_surfaces.hpp"
#include "geometry/solids/solid_model.hpp"

#include <algorithm>
#include <map>
#include <numeric>

namespace coilwright {

namespace {

/// A wall bears the name of its largest dome.
std::string name_of(const BuildingForm& building) {
    return std::max_element(building.domes.begin(), building.domes.end(),
                            [](const DomeForm& a, const DomeForm& b) { return is_larger(b, a); })
        ->id;
}

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

/// What a proven part is made of.
struct ProvenPart {
    BuildingShell shell; // in the part's frame
    Mesh mesh;           // in the design's
};

/// A part as a proven solid, or why it is none. Curves and faces that the tolerance brings together
/// are tried again with a finer one.
std::optional<SolidFault> mesh_part(const BuildingPart& part, double tolerance,
                                    ProvenPart& proven) {
    std::optional<SolidFault> fault;
    for (int finer = 0; finer < 3; ++finer, tolerance /= 4) {
        BuildingShell shell = mesh_building_shell(part.building, tolerance);
        bool crossing = shell.fault && shell.fault->kind == ShapeFault::crossing;
        if (shell.fault) {
            fault = told(shell.fault->kind, shell.fault->first, shell.fault->second);
        } else {
            proven.mesh = shell.mesh;
            place(shell.mesh, part); // the check is of the mesh in the design's frame
            fault = disproof(shell, "dome." + part.building.domes.front().id);
            crossing = fault.has_value();
            std::swap(proven.mesh, shell.mesh);
        }
        if (!fault)
            proven.shell = std::move(shell);
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

constexpr const char* finish_group = "FINISH";
constexpr const char* frames_group = "FRAMES";

class ShellModeller {
public:
    ShellModeller(const Schedule& schedule, const Design* finished, double tolerance)
        : schedule_(schedule), finished_(finished), tolerance_(tolerance) {}

    SolidResult run() {
        result_.model.name = schedule_.name;
        if (!tolerance_in_bounds(tolerance_)) {
            result_.faults.push_back(told(ShapeFault::tolerance, {}, {}));
            return std::move(result_);
        }
        if (finished_)
            result_.model.groups = {{finish_group, "Plaster, floor and ground", {}},
                                    {frames_group, "Frames", {}}};
        for (const BuildingPart& part : building_parts(schedule_.building))
            add_wall(part);
        if (finished_) {
            add_frames();
            add_floor();
            add_ground();
            auto& groups = result_.model.groups;
            groups.erase(std::remove_if(groups.begin(), groups.end(),
                                        [&](const SolidGroup& group) { return !used(group); }),
                         groups.end());
        }
        return std::move(result_);
    }

private:
    bool used(const SolidGroup& group) const {
        return std::any_of(result_.model.parts.begin(), result_.model.parts.end(),
                           [&](const SolidPart& part) { return part.group == group.slug; });
    }

    void add_wall(const BuildingPart& part) {
        const std::string name = name_of(part.building);
        ProvenPart proven;
        if (const auto fault = mesh_part(part, tolerance_, proven)) {
            result_.faults.push_back(*fault);
            return;
        }
        SolidPart solid;
        solid.slug = slugs_.unique(name);
        solid.title = title_of(part.building);
        solid.volume = volume(proven.mesh);
        solid.mesh = std::move(proven.mesh);
        result_.model.parts.push_back(std::move(solid));
        if (finished_)
            add_plaster(part, proven.shell);
    }

    void add_plaster(const BuildingPart& part, const BuildingShell& shell) {
        const Finish& finish = finished_->finish;
        PlasterFaces faces =
            plaster_faces(shell, part.building,
                          {finish.inside_plaster, finish.outside_plaster, finished_->ground.level});
        const std::string of = title_of(part.building);
        const std::string name = name_of(part.building);
        for (Mesh* mesh : {&faces.inside, &faces.outside, &faces.reveals})
            place(*mesh, part);
        add_finish(name + "_PLASTER_IN", "Inside plaster: w" + of.substr(1), Material::lime_plaster,
                   std::move(faces.inside));
        add_finish(name + "_PLASTER_OUT", "Outside plaster: w" + of.substr(1),
                   Material::earth_render, std::move(faces.outside));
        add_finish(name + "_REVEALS", "Plaster of the reveals: w" + of.substr(1),
                   Material::lime_plaster, std::move(faces.reveals));
    }

    void add_floor() {
        const double depth = finished_->finish.floor_build_up;
        const Region region = region_of(floor_expression(schedule_.building), exact_region);
        add_finish("FLOOR", "Floor", Material::earth_floor,
                   level_mesh(region, 0, depth, tolerance_), depth > 0);
    }

    void add_ground() {
        const double level = finished_->ground.level;
        const Region region = region_of(ground_expression(schedule_.building, level), exact_region);
        add_finish("GROUND", "Ground", Material::ground, level_mesh(region, level, 0, tolerance_));
    }

    void add_finish(const std::string& name, const std::string& title, Material material, Mesh mesh,
                    bool is_closed = false) {
        if (mesh.triangles.empty())
            return;
        SolidPart part;
        part.slug = slugs_.unique(slug(name));
        part.group = finish_group;
        part.title = title;
        part.material = material;
        part.printed = false;
        part.volume = is_closed ? volume(mesh) : 0;
        part.mesh = std::move(mesh);
        result_.model.parts.push_back(std::move(part));
    }

    void add_frames() {
        for (const OpeningPlan& opening : schedule_.openings) {
            const auto body = frame_body(opening);
            Mesh mesh = body ? mesh_lining(opening.form, *body, tolerance_) : Mesh{};
            if (mesh.triangles.empty())
                continue;
            place(mesh, opening.form.origin, opening.form.axis);
            add_finish(opening.form.id + "_FRAME", "Frame of " + opening.form.id, Material::timber,
                       std::move(mesh), true);
            result_.model.parts.back().group = frames_group;
        }
    }

    const Schedule& schedule_;
    const Design* finished_; // null: the walls alone
    double tolerance_;
    SlugTable slugs_;
    SolidResult result_;
};

} // namespace

SolidResult shell_model(const Schedule& schedule, double tolerance) {
    return ShellModeller(schedule, nullptr, tolerance).run();
}

SolidResult finished_shell_model(const Schedule& schedule, const Design& design, double tolerance) {
    return ShellModeller(schedule, &design, tolerance).run();
}

} // namespace coilwright
