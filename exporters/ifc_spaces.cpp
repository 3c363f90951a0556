#include "exporters/ifc_spaces.hpp"

#include "exporters/ifc_shapes.hpp"
#include "exporters/room_bodies.hpp"
#include "geometry/exact/exact_region.hpp"
#include "geometry/solids/site_surfaces.hpp"

#include <algorithm>

namespace coilwright {

namespace {

constexpr double floor_chord = 0.001;

std::string joined(const std::vector<std::string>& words) {
    std::string text;
    for (const std::string& word : words)
        text += (text.empty() ? "" : " + ") + word;
    return text;
}

/// What its domes are used for, each once; a tunnel is a passage.
std::string uses_of(const BuildingRoom& room, const BuildingForm& building) {
    std::vector<std::string> uses;
    for (const std::string& id : room.domes) {
        const std::string use = word(find_dome(building, id)->use);
        if (std::find(uses.begin(), uses.end(), use) == uses.end())
            uses.push_back(use);
    }
    return uses.empty() ? "passage" : joined(uses);
}

StepValue add_space(IfcFile& file, SlugTable& slugs, const BuildingPlan& plan,
                    const BuildingRoom& room, const StepValue& place) {
    const BuildingForm& building = plan.schedule.building;
    const std::string name = slugs.unique(room.id + "_ROOM");
    std::vector<StepValue> items;
    for (const Mesh& body : room_bodies(building, room, plan.design.finish.inside_plaster))
        items.push_back(file.mesh(body, nullptr));
    const StepValue shape = items.empty() ? step_unset : file.mesh_shape(items);
    const bool is_tunnel = !room.tunnel.empty();
    const std::string title = is_tunnel               ? "Room of tunnel " + room.id
                              : room.domes.size() > 1 ? "Open plan of domes " + joined(room.domes)
                                                      : "Room of dome " + room.id;
    const StepValue element =
        file.rooted("IFCSPACE", name, step_text(name), step_text(title),
                    {step_unset, file.placement(place), shape,
                     step_text(is_tunnel ? room.tunnel : joined(room.domes)), step_word("ELEMENT"),
                     step_word("INTERNAL"), step_number(0)});
    std::vector<IfcQuantity> quantities{{"NetVolume", IfcMeasure::volume, room.volume},
                                        {"Height", IfcMeasure::length, room.height}};
    if (room.floor.decided) {
        quantities.push_back({"NetFloorArea", IfcMeasure::area, room.floor.area});
        quantities.push_back({"NetPerimeter", IfcMeasure::length, perimeter(room.floor)});
    }
    file.add_quantities(element, name, "Qto_SpaceBaseQuantities", quantities);
    file.add_properties(element, name, "Coilwright_Room",
                        {{"Use", "IFCLABEL", step_text(uses_of(room, building))}});
    file.add_common(element, name, "Space", false);
    return element;
}

} // namespace

std::vector<StepValue> add_spaces(IfcFile& file, SlugTable& slugs, const BuildingPlan& plan,
                                  const StepValue& place) {
    std::vector<StepValue> spaces;
    for (const BuildingRoom& room :
         building_rooms(plan.schedule.building, plan.design.finish.inside_plaster, exact_region))
        spaces.push_back(add_space(file, slugs, plan, room, place));
    return spaces;
}

StepValue add_floor(IfcFile& file, SlugTable& slugs, const BuildingPlan& plan,
                    const StepValue& place) {
    const double depth = plan.design.finish.floor_build_up;
    const Region region =
        region_of(room_expression(plan.schedule.building, height_tie), exact_region);
    const MaterialLook& looks = look(Material::earth_floor);
    StepValue shape = step_unset;
    std::vector<StepValue> items;
    if (depth > 0) {
        for (const PlanFace& face : faces_of(region))
            items.push_back(file.extrusion(face.outline, face.holes,
                                           {{0, 0, -depth}, {1, 0, 0}, {0, 0, 1}}, depth, &looks));
        shape = items.empty() ? step_unset : file.swept_shape(items);
    } else if (const Mesh face = level_mesh(region, 0, 0, floor_chord); !face.triangles.empty())
        shape = file.surface_shape({file.open_mesh(face, &looks)});
    const std::string name = slugs.unique("FLOOR");
    const StepValue element = file.element("IFCSLAB", name, "Floor", "", file.placement(place),
                                           shape, {step_word("BASESLAB")}, {});
    std::vector<IfcQuantity> quantities{{"NetArea", IfcMeasure::area, region.area}};
    if (depth > 0) {
        quantities.push_back({"Depth", IfcMeasure::length, depth});
        quantities.push_back({"NetVolume", IfcMeasure::volume, region.area * depth});
    }
    file.add_quantities(element, name, "Qto_SlabBaseQuantities", quantities);
    file.add_common(element, name, "Slab", false, false);
    file.note_material(element, looks);
    return element;
}

} // namespace coilwright
