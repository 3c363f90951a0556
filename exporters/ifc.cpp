#include "exporters/ifc.hpp"

#include "exporters/ifc_elements.hpp"
#include "exporters/ifc_shapes.hpp"
#include "exporters/ifc_spaces.hpp"
#include "geometry/base/slug.hpp"

#include <algorithm>
#include <stdexcept>

namespace coilwright {
namespace {

using Values = std::vector<StepValue>;

StepValue length(double metres) {
    return step_number(metres);
}

std::string kind_slug(WholeKind kind) {
    switch (kind) {
    case WholeKind::footing:
        return "_FOOTING";
    case WholeKind::wall:
        return "_WALL";
    case WholeKind::roof:
        return "_ROOF";
    case WholeKind::pier:
        return "_PIER";
    }
    return {};
}

std::string kind_title(WholeKind kind) {
    switch (kind) {
    case WholeKind::footing:
        return "Footing of ";
    case WholeKind::wall:
        return "Wall of ";
    case WholeKind::roof:
        return "Roof of ";
    case WholeKind::pier:
        return "Pier ";
    }
    return {};
}

class BuildingWriter {
public:
    BuildingWriter(const BuildingPlan& plan, const SolidModel& courses, IfcSchema schema)
        : plan_(plan), schedule_(plan.schedule), model_(courses), file_(schedule_.name, schema),
          wholes_(wholes_of(plan, courses)) {}

    std::string text() {
        add_spatial_structure();
        for (const Whole& whole : wholes_)
            add_whole(whole);
        for (const OpeningPlan& opening : schedule_.openings)
            add_opening(opening);
        for (const DomeForm& dome : schedule_.building.domes)
            if (dome.cap_courses == 0)
                add_skylight(dome);
        for (const Lintel& lintel : schedule_.lintels)
            add_lintel(lintel);
        contained_.push_back(add_floor(file_, slugs_, plan_, place_));
        file_.aggregate(storey_, "storey", add_spaces(file_, slugs_, plan_, place_));
        if (!contained_.empty())
            file_.rooted("IFCRELCONTAINEDINSPATIALSTRUCTURE", "storey/elements", step_unset,
                         step_unset, {step_list(contained_), storey_});
        file_.add_materials();
        return file_.text("building.ifc");
    }

private:
    void add_spatial_structure() {
        const StepValue units =
            step_list({unit("LENGTHUNIT", "METRE"), unit("AREAUNIT", "SQUARE_METRE"),
                       unit("VOLUMEUNIT", "CUBIC_METRE"), unit("PLANEANGLEUNIT", "RADIAN")});
        const StepValue assignment = file_.add("IFCUNITASSIGNMENT", {units});
        const StepValue name = step_text(schedule_.name);
        const StepValue project = file_.rooted(
            "IFCPROJECT", "project", name, step_unset,
            {step_unset, step_unset, step_unset, step_list({file_.context()}), assignment});
        const StepValue whole = step_word("ELEMENT");
        const StepValue site_place = file_.placement(step_unset);
        const StepValue site =
            file_.rooted("IFCSITE", "site", step_text("Site"), step_unset,
                         {step_unset, site_place, step_unset, step_unset, whole, step_unset,
                          step_unset, step_unset, step_unset, step_unset});
        const StepValue building_place = file_.placement(site_place);
        const StepValue building = file_.rooted("IFCBUILDING", "building", name, step_unset,
                                                {step_unset, building_place, step_unset, name,
                                                 whole, step_unset, step_unset, step_unset});
        place_ = file_.placement(building_place);
        storey_ = file_.rooted("IFCBUILDINGSTOREY", "storey", step_text("Ground floor"), step_unset,
                               {step_unset, place_, step_unset, step_unset, whole, length(0)});
        file_.aggregate(project, "project", {site});
        file_.aggregate(site, "site", {building});
        file_.aggregate(building, "building", {storey_});
    }

    StepValue unit(const std::string& kind, const std::string& name) {
        return file_.add("IFCSIUNIT", {"*", step_word(kind), step_unset, step_word(name)});
    }

    // An element without a body, and its courses with theirs.
    void add_whole(const Whole& whole) {
        const std::string name = slugs_.unique(whole.of + kind_slug(whole.kind));
        const std::string title = kind_title(whole.kind) + whole.word + " " + whole.of;
        const StepValue place = file_.placement(place_);
        const StepValue element = add_bare_whole(whole, name, title, place);
        Values parts;
        double volume = 0;
        for (const CourseBodies& course : whole.courses) {
            parts.push_back(add_course(whole, course, place));
            for (const SolidPart* part : course.parts)
                volume += part->volume;
        }
        for (const SolidPart* bag : whole.fan_bags) {
            parts.push_back(add_fan_bag(*bag, place));
            volume += bag->volume;
        }
        for (const SleevePlan& sleeve : schedule_.sleeves)
            if (sleeve.form.in == whole.of && sleeve.mark() >= whole.bottom - height_tie &&
                sleeve.mark() < whole.top - height_tie)
                parts.push_back(add_sleeve(sleeve, place));
        file_.aggregate(element, name, parts);
        add_whole_quantities(whole, name, element, volume);
        add_whole_properties(whole, name, element);
        contained_.push_back(element);
        if (whole.kind == WholeKind::wall || whole.kind == WholeKind::roof)
            hosts_.push_back({&whole, element, place});
    }

    StepValue add_bare_whole(const Whole& whole, const std::string& name, const std::string& title,
                             const StepValue& place) {
        switch (whole.kind) {
        case WholeKind::footing:
            return file_.element("IFCFOOTING", name, title, "", place, step_unset,
                                 {step_word("STRIP_FOOTING")}, {});
        case WholeKind::wall:
            return file_.element("IFCWALL", name, title, "", place, step_unset, {},
                                 {step_word("SOLIDWALL")});
        case WholeKind::roof:
            return file_.element("IFCROOF", name, title, "", place, step_unset,
                                 {step_word(whole.word == "tunnel" ? "BARREL_ROOF" : "DOME_ROOF")},
                                 {});
        case WholeKind::pier:
            break;
        }
        return file_.element("IFCCOLUMN", name, title, "BUTTRESS", place, step_unset, {},
                             {step_word("USERDEFINED")});
    }

    void add_whole_quantities(const Whole& whole, const std::string& name, const StepValue& element,
                              double volume) {
        std::vector<IfcQuantity> quantities{{"NetVolume", IfcMeasure::volume, volume}};
        std::string set = "Qto_ColumnBaseQuantities";
        if (whole.kind == WholeKind::wall || whole.kind == WholeKind::footing) {
            set = whole.kind == WholeKind::wall ? "Qto_WallBaseQuantities"
                                                : "Qto_FootingBaseQuantities";
            quantities.push_back({"Width", IfcMeasure::length, whole.width});
            quantities.push_back({"Height", IfcMeasure::length, whole.top - whole.bottom});
        } else if (whole.kind == WholeKind::roof) {
            set = "Coilwright_RoofBaseQuantities"; // the standard set knows areas alone
        }
        file_.add_quantities(element, name, set, quantities);
    }

    void add_whole_properties(const Whole& whole, const std::string& name,
                              const StepValue& element) {
        switch (whole.kind) {
        case WholeKind::wall:
            file_.add_common(element, name, "Wall", true, true);
            break;
        case WholeKind::roof:
            file_.add_common(element, name, "Roof", true);
            break;
        case WholeKind::pier:
            file_.add_common(element, name, "Column", true, true);
            break;
        case WholeKind::footing: // the standard's set says nothing of our footings
            break;
        }
        file_.note_material(element, look(whole.courses.front().parts.front()->material));
    }

    StepValue add_course(const Whole& whole, const CourseBodies& bodies, const StepValue& place) {
        const Course& course = schedule_.courses.at(static_cast<std::size_t>(bodies.course - 1));
        std::string name = course_slug(whole.of, bodies.course, {});
        name =
            slugs_.unique(name.substr(0, name.size() - 1)); // of the whole course: no part's name
        Values items;
        double volume = 0, radius = 0;
        for (const SolidPart* part : bodies.parts) {
            items.push_back(file_.mesh(part->mesh, &look(part->material)));
            volume += part->volume;
            radius = std::max(radius, part->compass_radius);
        }
        const StepValue shape = file_.mesh_shape(items);
        const StepValue element =
            file_.element("IFCBUILDINGELEMENTPART", name,
                          "Course " + std::to_string(bodies.course) + " of " + whole.of, "COURSE",
                          file_.placement(place), shape, {}, {step_word("USERDEFINED")});
        std::vector<IfcProperty> properties{
            {"CourseNumber", "IFCINTEGER", std::to_string(bodies.course)},
            {"Bottom", "IFCLENGTHMEASURE", length(course.bottom)},
            {"Top", "IFCLENGTHMEASURE", length(course.top)},
            {"Tube", "IFCLABEL", step_text(tube_of_course(plan_, whole, course))}};
        if (const std::string fill = fill_of_course(plan_.design, bodies.course); !fill.empty())
            properties.push_back({"Fill", "IFCLABEL", step_text(fill)});
        if (radius > 0)
            properties.push_back({"CompassRadius", "IFCPOSITIVELENGTHMEASURE", length(radius)});
        file_.add_properties(element, name, "Coilwright_Course", properties);
        file_.add_quantities(element, name, "Coilwright_CourseBaseQuantities",
                             {{"NetVolume", IfcMeasure::volume, volume}});
        file_.note_material(element, look(bodies.parts.front()->material));
        return element;
    }

    StepValue add_fan_bag(const SolidPart& bag, const StepValue& place) {
        const std::string name = slugs_.unique(bag.slug);
        const StepValue shape = file_.mesh_shape({file_.mesh(bag.mesh, &look(bag.material))});
        const StepValue element =
            file_.element("IFCBUILDINGELEMENTPART", name, bag.title, "FAN BAG",
                          file_.placement(place), shape, {}, {step_word("USERDEFINED")});
        file_.add_quantities(element, name, "Coilwright_FanBagBaseQuantities",
                             {{"NetVolume", IfcMeasure::volume, bag.volume}});
        file_.note_material(element, look(bag.material));
        return element;
    }

    // A pipe through the wall from plaster to plaster; a thin one lies on its joint.
    StepValue add_sleeve(const SleevePlan& laid, const StepValue& place) {
        SleeveForm sleeve = laid.form;
        sleeve.height = laid.mark();
        const std::string name = slugs_.unique(sleeve.id + "_SLEEVE");
        const HoleReach reach = sleeve_reach(sleeve, plan_);
        const Vec2 axis = along(sleeve.bearing), origin = sleeve.origin + reach.from * axis;
        const IfcFrame frame{{origin.x(), origin.y(), sleeve.height},
                             {-axis.y(), axis.x(), 0},
                             {axis.x(), axis.y(), 0}};
        const StepValue shape = file_.swept_shape({file_.extrusion(
            circle_outline(sleeve.diameter / 2), {}, frame, reach.to - reach.from, nullptr)});
        const StepValue element =
            file_.element("IFCBUILDINGELEMENTPART", name, "Sleeve " + sleeve.id, "SLEEVE",
                          file_.placement(place), shape, {}, {step_word("USERDEFINED")});
        file_.add_properties(element, name, "Coilwright_Sleeve",
                             {{"Diameter", "IFCPOSITIVELENGTHMEASURE", length(sleeve.diameter)},
                              {"Height", "IFCLENGTHMEASURE", length(sleeve.height)},
                              {"Bearing", "IFCREAL", step_number(sleeve.bearing.degrees)}});
        return element;
    }

    struct Host {
        const Whole* whole;
        StepValue element, place;
    };

    // The wall or roof that holds a height of a dome or tunnel.
    const Host& host_at(const std::string& id, double z) const {
        const Host* best = nullptr;
        for (const Host& host : hosts_)
            if (host.whole->of == id && (!best || host.whole->bottom <= z + height_tie))
                best = &host;
        if (!best)
            throw std::logic_error("an opening without a wall");
        return *best;
    }

    const SolidPart* frame_of(const OpeningForm& form) const {
        const std::string name = slug(form.id + "_FRAME");
        const auto found = std::find_if(model_.parts.begin(), model_.parts.end(),
                                        [&](const SolidPart& part) { return part.slug == name; });
        return found == model_.parts.end() ? nullptr : &*found;
    }

    static IfcFrame axes_of(const OpeningForm& form, double along) {
        const Vec2 origin = form.origin + along * form.axis;
        return {{origin.x(), origin.y(), 0},
                {-form.axis.y(), form.axis.x(), 0},
                {form.axis.x(), form.axis.y(), 0}};
    }

    void add_opening(const OpeningPlan& opening) {
        const OpeningForm& form = opening.form;
        const Host& host = host_at(form.in, form.sill);
        const bool is_niche = form.use == OpeningUse::niche;
        const std::string hole = slugs_.unique(form.id + "_HOLE");
        const std::vector<Vec2> outline = opening_outline(form);
        const HoleReach reach = hole_reach(opening, schedule_);
        const StepValue shape =
            file_.hole_shape(outline, axes_of(form, reach.from), reach.to - reach.from);
        const std::string kind = is_niche ? "RECESS" : "OPENING";
        const StepValue place = file_.placement(host.place);
        const StepValue element = file_.element("IFCOPENINGELEMENT", hole, "Hole for " + form.id,
                                                kind, place, shape, {}, {step_word(kind)});
        file_.add_quantities(element, hole, "Qto_OpeningElementBaseQuantities",
                             {{"Width", IfcMeasure::length, 2 * form.half_width},
                              {"Height", IfcMeasure::length, form.top - form.sill},
                              {"Depth", IfcMeasure::length, reach.to - reach.from},
                              {"Area", IfcMeasure::area, polygon_area(outline)}});
        file_.rooted("IFCRELVOIDSELEMENT", hole + "/voids", step_unset, step_unset,
                     {host.element, element});
        if (!is_niche)
            add_filling(opening, outline, element, place);
    }

    static std::string title_of(const OpeningForm& form) {
        const std::string use = word(form.use);
        return use == form.id ? use : use + " " + form.id;
    }

    // The hole under a dome's skylight, plumb through its curb or else its last ring, and the light
    // on it, which is not ours to shape.
    void add_skylight(const DomeForm& dome) {
        const double radius = dome.last_ring_radius;
        const int plumb = std::max(1, dome.curb_courses); // courses
        const double low = dome.course_bottom(dome.courses() + 1 - plumb);
        const double depth = dome.top() - low;
        const Host& host = host_at(dome.id, low);
        const std::string hole = slugs_.unique(dome.id + "_SKYLIGHT_HOLE");
        const std::vector<Vec2> outline = circle_outline(radius);
        const IfcFrame frame{{dome.at.x(), dome.at.y(), low}, {1, 0, 0}, {0, 0, 1}};
        const StepValue place = file_.placement(host.place);
        const StepValue element = file_.element(
            "IFCOPENINGELEMENT", hole, "Hole for the skylight of " + dome.id, "OPENING", place,
            file_.hole_shape(outline, frame, depth), {}, {step_word("OPENING")});
        const double area = pi * radius * radius;
        file_.add_quantities(element, hole, "Qto_OpeningElementBaseQuantities",
                             {{"Width", IfcMeasure::length, 2 * radius},
                              {"Height", IfcMeasure::length, 2 * radius},
                              {"Depth", IfcMeasure::length, depth},
                              {"Area", IfcMeasure::area, area}});
        file_.rooted("IFCRELVOIDSELEMENT", hole + "/voids", step_unset, step_unset,
                     {host.element, element});
        const std::string name = slugs_.unique(dome.id + "_SKYLIGHT");
        const StepValue light = file_.element(
            "IFCWINDOW", name, "skylight of " + dome.id, "SKYLIGHT", file_.placement(place),
            step_unset, {length(2 * radius), length(2 * radius)},
            {step_word("SKYLIGHT"), step_word("NOTDEFINED"), step_unset});
        file_.add_quantities(light, name, "Qto_WindowBaseQuantities",
                             {{"Width", IfcMeasure::length, 2 * radius},
                              {"Height", IfcMeasure::length, 2 * radius},
                              {"Area", IfcMeasure::area, area}});
        file_.add_common(light, name, "Window", true);
        file_.rooted("IFCRELFILLSELEMENT", name + "/fills", step_unset, step_unset,
                     {element, light});
        contained_.push_back(light);
    }

    // A door or a window: its frame, where the frame has room in the wall.
    void add_filling(const OpeningPlan& opening, const std::vector<Vec2>& outline,
                     const StepValue& hole, const StepValue& place) {
        const OpeningForm& form = opening.form;
        const std::string name = slugs_.unique(form.id);
        StepValue shape = step_unset;
        if (const SolidPart* frame = frame_of(form))
            shape = file_.mesh_shape({file_.mesh(frame->mesh, &look(frame->material))});
        const double height = form.top - form.sill, width = 2 * form.half_width;
        const Values both{length(height), length(width)};
        const bool is_door = form.use == OpeningUse::door;
        const Values only_ifc4{step_word(is_door ? "DOOR" : "WINDOW"), step_word("NOTDEFINED"),
                               step_unset};
        const StepValue element =
            file_.element(is_door ? "IFCDOOR" : "IFCWINDOW", name, title_of(form),
                          form.use == OpeningUse::vent ? "VENT" : "", file_.placement(place), shape,
                          both, only_ifc4);
        file_.add_quantities(element, name,
                             is_door ? "Qto_DoorBaseQuantities" : "Qto_WindowBaseQuantities",
                             {{"Width", IfcMeasure::length, width},
                              {"Height", IfcMeasure::length, height},
                              {"Area", IfcMeasure::area, polygon_area(outline)}});
        file_.add_properties(element, name, "Coilwright_Opening",
                             {{"ClearWidth", "IFCLENGTHMEASURE", length(opening.clear_width)},
                              {"ClearHeight", "IFCLENGTHMEASURE", length(opening.clear_height)},
                              {"Sill", "IFCLENGTHMEASURE", length(form.sill)}});
        file_.add_common(element, name, is_door ? "Door" : "Window", true);
        file_.rooted("IFCRELFILLSELEMENT", name + "/fills", step_unset, step_unset,
                     {hole, element});
        if (shape != step_unset)
            file_.note_material(element, look(Material::timber));
        contained_.push_back(element);
    }

    void add_lintel(const Lintel& lintel) {
        const auto opening =
            std::find_if(schedule_.openings.begin(), schedule_.openings.end(),
                         [&](const OpeningPlan& plan) { return plan.form.id == lintel.opening; });
        if (opening == schedule_.openings.end())
            return;
        const std::string name = slugs_.unique(lintel.opening + "_LINTEL");
        const MaterialLook& looks =
            look(lintel.kind == LintelKind::timber ? Material::timber : Material::concrete);
        const double half = lintel.length / 2, low = lintel.bottom, high = low + lintel.depth;
        const IfcFrame frame = axes_of(opening->form, lintel.centre_distance - lintel.width / 2);
        const StepValue shape = file_.swept_shape(
            {file_.extrusion({{half, low}, {half, high}, {-half, high}, {-half, low}}, {}, frame,
                             lintel.width, &looks)});
        const StepValue element =
            file_.element("IFCBEAM", name, "Lintel over " + lintel.opening, "LINTEL",
                          file_.placement(place_), shape, {}, {step_word("LINTEL")});
        file_.add_quantities(
            element, name, "Qto_BeamBaseQuantities",
            {{"Length", IfcMeasure::length, lintel.length},
             {"NetVolume", IfcMeasure::volume, lintel.length * lintel.width * lintel.depth}});
        file_.add_properties(element, name, "Coilwright_Lintel",
                             {{"Bearing", "IFCLENGTHMEASURE", length(lintel.bearing)}});
        file_.add_common(element, name, "Beam", true, true);
        file_.note_material(element, looks);
        contained_.push_back(element);
    }

    const BuildingPlan& plan_;
    const Schedule& schedule_;
    const SolidModel& model_;
    IfcFile file_;
    std::vector<Whole> wholes_;
    SlugTable slugs_;
    StepValue storey_, place_;
    Values contained_;
    std::vector<Host> hosts_;
};

} // namespace

std::string ifc_text(const BuildingPlan& plan, const SolidModel& courses, IfcSchema schema) {
    return BuildingWriter(plan, courses, schema).text();
}

} // namespace coilwright
