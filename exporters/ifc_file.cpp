#include "exporters/ifc_file.hpp"

#include "exporters/ifc_guid.hpp"

#include <Eigen/Geometry>
#include <utility>

namespace coilwright {
namespace {

const char* const program = "Coilwright " COILWRIGHT_VERSION;

StepValue coordinates(const Vec3& at) {
    return step_list({step_number(at.x()), step_number(at.y()), step_number(at.z())});
}

StepValue colour(IfcFile& file, const MaterialLook& looks) {
    return file.add("IFCCOLOURRGB", {step_unset, step_number(srgb_encoded(looks.red)),
                                     step_number(srgb_encoded(looks.green)),
                                     step_number(srgb_encoded(looks.blue))});
}

} // namespace

IfcFile::IfcFile(std::string design_name, IfcSchema schema)
    : design_name_(std::move(design_name)), schema_(schema) {
    if (!is_ifc4()) { // it wants an owner of everything
        const StepValue person =
            add("IFCPERSON", {step_unset, step_text("not given"), step_unset, step_unset,
                              step_unset, step_unset, step_unset, step_unset});
        const StepValue office = add("IFCORGANIZATION", {step_unset, step_text("not given"),
                                                         step_unset, step_unset, step_unset});
        const StepValue both = add("IFCPERSONANDORGANIZATION", {person, office, step_unset});
        const StepValue application =
            add("IFCAPPLICATION", {office, step_text(COILWRIGHT_VERSION), step_text("Coilwright"),
                                   step_text("coilwright")});
        owner_ = add("IFCOWNERHISTORY", {both, application, step_unset, step_word("NOCHANGE"),
                                         step_unset, step_unset, step_unset, "315532800"});
    }
    const StepValue north = add("IFCDIRECTION", {step_list({"0.", "1."})});
    context_ = add("IFCGEOMETRICREPRESENTATIONCONTEXT",
                   {step_unset, step_text("Model"), "3", "0.000001", axes({}), north});
    body_ = subcontext("Body");
    reference_ = subcontext("Reference");
}

StepValue IfcFile::subcontext(const std::string& name) {
    return add("IFCGEOMETRICREPRESENTATIONSUBCONTEXT",
               {step_text(name), step_text("Model"), "*", "*", "*", "*", context_, step_unset,
                step_word("MODEL_VIEW"), step_unset});
}

StepValue IfcFile::rooted(const std::string& type, const std::string& key, const StepValue& name,
                          const StepValue& description, const std::vector<StepValue>& rest) {
    std::vector<StepValue> values{step_text(ifc_guid(design_name_, key)), owner_, name,
                                  description};
    values.insert(values.end(), rest.begin(), rest.end());
    return add(type, values);
}

StepValue IfcFile::element(const std::string& type, const std::string& slug,
                           const std::string& title, const std::string& object_type,
                           const StepValue& placement, const StepValue& shape,
                           std::vector<StepValue> both, const std::vector<StepValue>& only_ifc4) {
    std::vector<StepValue> rest{object_type.empty() ? step_unset : step_text(object_type),
                                placement, shape, step_text(slug)};
    rest.insert(rest.end(), both.begin(), both.end());
    if (is_ifc4())
        rest.insert(rest.end(), only_ifc4.begin(), only_ifc4.end());
    return rooted(type, slug, step_text(slug), step_text(title), rest);
}

StepValue IfcFile::point(const Vec3& at) {
    return add("IFCCARTESIANPOINT", {coordinates(at)});
}

StepValue IfcFile::direction(const Vec3& along) {
    return add("IFCDIRECTION", {coordinates(along)});
}

StepValue IfcFile::axes(const IfcFrame& frame) {
    const StepValue origin = point(frame.origin), z = direction(frame.z), x = direction(frame.x);
    return add("IFCAXIS2PLACEMENT3D", {origin, z, x});
}

StepValue IfcFile::placement(const StepValue& relative_to) {
    return add("IFCLOCALPLACEMENT", {relative_to, axes({})});
}

StepValue IfcFile::style(const MaterialLook& looks) {
    const auto found = styles_.find(looks.name);
    if (found != styles_.end())
        return found->second;
    std::vector<StepValue> values(9, step_unset);
    values[0] = colour(*this, looks);
    values[1] = step_number(1 - looks.opacity);
    values[8] = step_word("NOTDEFINED");
    const StepValue rendering = add("IFCSURFACESTYLERENDERING", values);
    StepValue made =
        add("IFCSURFACESTYLE", {step_text(looks.name), step_word("BOTH"), step_list({rendering})});
    if (!is_ifc4())
        made = add("IFCPRESENTATIONSTYLEASSIGNMENT", {step_list({made})});
    styles_.emplace(looks.name, made);
    return made;
}

void IfcFile::apply_style(const StepValue& item, const MaterialLook& looks) {
    const StepValue with = style(looks);
    add("IFCSTYLEDITEM", {item, step_list({with}), step_unset});
}

StepValue IfcFile::mesh(const Mesh& mesh, const MaterialLook* looks) {
    return faces(mesh, looks, true);
}

StepValue IfcFile::open_mesh(const Mesh& mesh, const MaterialLook* looks) {
    return faces(mesh, looks, false);
}

StepValue IfcFile::faces(const Mesh& mesh, const MaterialLook* looks, bool closed) {
    std::vector<StepValue> faces, points;
    StepValue item;
    if (is_ifc4()) {
        for (const Vec3& vertex : mesh.vertices)
            points.push_back(coordinates(vertex));
        for (const auto& [a, b, c] : mesh.triangles)
            faces.push_back(
                step_list({std::to_string(a + 1), std::to_string(b + 1), std::to_string(c + 1)}));
        const StepValue list = add("IFCCARTESIANPOINTLIST3D", {step_list(points)});
        item = add("IFCTRIANGULATEDFACESET",
                   {list, step_unset, step_word(closed ? "T" : "F"), step_list(faces), step_unset});
    } else {
        for (const Vec3& vertex : mesh.vertices)
            points.push_back(point(vertex));
        for (const auto& [a, b, c] : mesh.triangles) {
            const StepValue loop =
                add("IFCPOLYLOOP", {step_list({points[a], points[b], points[c]})});
            const StepValue bound = add("IFCFACEOUTERBOUND", {loop, step_word("T")});
            faces.push_back(add("IFCFACE", {step_list({bound})}));
        }
        const StepValue shell = add(closed ? "IFCCLOSEDSHELL" : "IFCOPENSHELL", {step_list(faces)});
        item = closed ? add("IFCFACETEDBREP", {shell})
                      : add("IFCSHELLBASEDSURFACEMODEL", {step_list({shell})});
    }
    if (looks)
        apply_style(item, *looks);
    return item;
}

StepValue IfcFile::polygon(const std::vector<Vec2>& outline) {
    std::vector<StepValue> points;
    for (const Vec2& at : outline)
        points.push_back(
            add("IFCCARTESIANPOINT", {step_list({step_number(at.x()), step_number(at.y())})}));
    points.push_back(points.front());
    return add("IFCPOLYLINE", {step_list(points)});
}

StepValue IfcFile::extrusion(const std::vector<Vec2>& outline,
                             const std::vector<std::vector<Vec2>>& holes, const IfcFrame& frame,
                             double depth, const MaterialLook* looks) {
    std::vector<StepValue> inner;
    for (const std::vector<Vec2>& hole : holes)
        inner.push_back(polygon(hole));
    const StepValue outer = polygon(outline);
    const StepValue profile =
        inner.empty() ? add("IFCARBITRARYCLOSEDPROFILEDEF", {step_word("AREA"), step_unset, outer})
                      : add("IFCARBITRARYPROFILEDEFWITHVOIDS",
                            {step_word("AREA"), step_unset, outer, step_list(inner)});
    const StepValue where = axes(frame), up = direction({0, 0, 1});
    const StepValue item = add("IFCEXTRUDEDAREASOLID", {profile, where, up, step_number(depth)});
    if (looks)
        apply_style(item, *looks);
    return item;
}

StepValue IfcFile::shape(const std::string& name, const StepValue& context,
                         const std::vector<StepValue>& items, const std::string& kind) {
    const StepValue representation = add(
        "IFCSHAPEREPRESENTATION", {context, step_text(name), step_text(kind), step_list(items)});
    return add("IFCPRODUCTDEFINITIONSHAPE", {step_unset, step_unset, step_list({representation})});
}

StepValue IfcFile::mesh_shape(const std::vector<StepValue>& items) {
    return shape("Body", body_, items, is_ifc4() ? "Tessellation" : "Brep");
}

StepValue IfcFile::surface_shape(const std::vector<StepValue>& items) {
    return shape("Body", body_, items, is_ifc4() ? "Tessellation" : "SurfaceModel");
}

StepValue IfcFile::swept_shape(const std::vector<StepValue>& items) {
    return shape("Body", body_, items, "SweptSolid");
}

StepValue IfcFile::hole_shape(const std::vector<Vec2>& outline, const IfcFrame& frame,
                              double depth) {
    const Vec3 y = frame.z.cross(frame.x);
    std::vector<StepValue> edges;
    for (const double along : {0.0, depth}) {
        std::vector<StepValue> points;
        for (const Vec2& at : outline)
            points.push_back(point(frame.origin + along * frame.z + at.x() * frame.x + at.y() * y));
        points.push_back(points.front());
        edges.push_back(add("IFCPOLYLINE", {step_list(points)}));
    }
    return shape("Reference", reference_, edges, "Curve3D");
}

void IfcFile::aggregate(const StepValue& whole, const std::string& key,
                        const std::vector<StepValue>& parts) {
    if (!parts.empty())
        rooted("IFCRELAGGREGATES", key + "/parts", step_unset, step_unset,
               {whole, step_list(parts)});
}

void IfcFile::add_properties(const StepValue& of, const std::string& key, const std::string& set,
                             const std::vector<IfcProperty>& properties) {
    std::vector<StepValue> values;
    for (const IfcProperty& property : properties)
        values.push_back(
            add("IFCPROPERTYSINGLEVALUE", {step_text(property.name), step_unset,
                                           step_typed(property.type, property.value), step_unset}));
    const StepValue made =
        rooted("IFCPROPERTYSET", key + "/" + set, step_text(set), step_unset, {step_list(values)});
    rooted("IFCRELDEFINESBYPROPERTIES", key + "/has/" + set, step_unset, step_unset,
           {step_list({of}), made});
}

void IfcFile::add_common(const StepValue& of, const std::string& key, const std::string& kind,
                         bool is_external, std::optional<bool> bears) {
    const auto word = [](bool yes) { return step_word(yes ? "T" : "F"); };
    std::vector<IfcProperty> properties{{"IsExternal", "IFCBOOLEAN", word(is_external)}};
    if (bears)
        properties.push_back({"LoadBearing", "IFCBOOLEAN", word(*bears)});
    add_properties(of, key, "Pset_" + kind + "Common", properties);
}

void IfcFile::add_quantities(const StepValue& of, const std::string& key, const std::string& set,
                             const std::vector<IfcQuantity>& quantities) {
    const std::string name = is_ifc4() ? set : "BaseQuantities";
    std::vector<StepValue> made;
    for (const IfcQuantity& quantity : quantities) {
        const std::string type = quantity.measure == IfcMeasure::length ? "IFCQUANTITYLENGTH"
                                 : quantity.measure == IfcMeasure::area ? "IFCQUANTITYAREA"
                                                                        : "IFCQUANTITYVOLUME";
        std::vector<StepValue> values{step_text(quantity.name), step_unset, step_unset,
                                      step_number(quantity.value)};
        if (is_ifc4())
            values.push_back(step_unset); // formula
        made.push_back(add(type, values));
    }
    const StepValue list = rooted("IFCELEMENTQUANTITY", key + "/quantities", step_text(name),
                                  step_unset, {step_unset, step_list(made)});
    rooted("IFCRELDEFINESBYPROPERTIES", key + "/has/quantities", step_unset, step_unset,
           {step_list({of}), list});
}

void IfcFile::note_material(const StepValue& of, const MaterialLook& looks) {
    materials_[looks.name].push_back(of);
}

void IfcFile::add_materials() {
    for (const auto& [name, elements] : materials_) {
        std::vector<StepValue> values{step_text(name)};
        if (is_ifc4())
            values.insert(values.end(), 2, step_unset);
        const StepValue material = add("IFCMATERIAL", values);
        rooted("IFCRELASSOCIATESMATERIAL", "material/" + name, step_unset, step_unset,
               {step_list(elements), material});
    }
}

std::string IfcFile::text(const std::string& file_name) const {
    return file_.text(is_ifc4() ? "ViewDefinition [notYetAssigned]"
                                : "ViewDefinition [CoordinationView_V2.0]",
                      file_name, program, is_ifc4() ? "IFC4" : "IFC2X3");
}

} // namespace coilwright
