// The vocabulary of IFC that our buildings need: what IFC4 (ISO 16739-1:2018) and IFC2x3 TC1 spell
// differently is decided here and nowhere else. What stands for what: ifc.cpp.
#pragma once

#include "exporters/materials.hpp"
#include "exporters/step_text.hpp"
#include "geometry/solids/mesh.hpp"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace coilwright {

enum class IfcSchema { ifc4, ifc2x3 };

/// A frame for swept shapes: x and y span the outline's plane, z = x cross y is what it is swept
/// along.
struct IfcFrame {
    Vec3 origin{0, 0, 0}, x{1, 0, 0}, z{0, 0, 1};
};

struct IfcProperty {
    std::string name, type; // "CompassRadius", "IFCPOSITIVELENGTHMEASURE"
    StepValue value;
};
enum class IfcMeasure { length, area, volume };
struct IfcQuantity {
    std::string name;
    IfcMeasure measure = IfcMeasure::length;
    double value = 0;
};

class IfcFile {
public:
    IfcFile(std::string design_name, IfcSchema schema);

    bool is_ifc4() const { return schema_ == IfcSchema::ifc4; }
    StepValue add(const std::string& type, const std::vector<StepValue>& values) {
        return file_.add(type, values);
    }
    /// Anything with an identity: GlobalId (from `key`), owner, name, description, then `rest`.
    StepValue rooted(const std::string& type, const std::string& key, const StepValue& name,
                     const StepValue& description, const std::vector<StepValue>& rest);
    /// An element: its slug is name, tag and key of its identity. `only_ifc4` follows `both`.
    StepValue element(const std::string& type, const std::string& slug, const std::string& title,
                      const std::string& object_type, const StepValue& placement,
                      const StepValue& shape, std::vector<StepValue> both,
                      const std::vector<StepValue>& only_ifc4);

    StepValue placement(const StepValue& relative_to); // at the same place
    StepValue point(const Vec3& at);
    StepValue direction(const Vec3& along);

    /// Items of a shape, styled. Outlines are closed polygons, anticlockwise, without a repeated
    /// end.
    StepValue mesh(const Mesh& mesh, const MaterialLook* looks);
    /// A mesh with rims: no body.
    StepValue open_mesh(const Mesh& mesh, const MaterialLook* looks);
    StepValue extrusion(const std::vector<Vec2>& outline,
                        const std::vector<std::vector<Vec2>>& holes, const IfcFrame& frame,
                        double depth, const MaterialLook* looks);
    StepValue mesh_shape(const std::vector<StepValue>& items);
    StepValue surface_shape(const std::vector<StepValue>& items);
    StepValue swept_shape(const std::vector<StepValue>& items);
    /// Of a hole that the bodies around it leave already: its edges at both ends, so that no reader
    /// cuts it out once more.
    StepValue hole_shape(const std::vector<Vec2>& outline, const IfcFrame& frame, double depth);

    /// The standard set of a kind: "Pset_WallCommon" with IsExternal, and what bears with
    /// LoadBearing.
    void add_common(const StepValue& of, const std::string& key, const std::string& kind,
                    bool is_external, std::optional<bool> bears = std::nullopt);
    void aggregate(const StepValue& whole, const std::string& key,
                   const std::vector<StepValue>& parts);
    void add_properties(const StepValue& of, const std::string& key, const std::string& set,
                        const std::vector<IfcProperty>& properties);
    /// `set` is the name that IFC4 gives to the base quantities of a kind.
    void add_quantities(const StepValue& of, const std::string& key, const std::string& set,
                        const std::vector<IfcQuantity>& quantities);
    void note_material(const StepValue& of, const MaterialLook& looks);
    /// Writes what was noted. Once, at the end.
    void add_materials();

    StepValue context() const { return context_; }
    std::string text(const std::string& file_name) const;

private:
    StepValue faces(const Mesh& mesh, const MaterialLook* looks, bool closed);
    StepValue polygon(const std::vector<Vec2>& outline);
    StepValue axes(const IfcFrame& frame);
    StepValue style(const MaterialLook& looks);
    void apply_style(const StepValue& item, const MaterialLook& looks);
    StepValue subcontext(const std::string& name);
    StepValue shape(const std::string& name, const StepValue& context,
                    const std::vector<StepValue>& items, const std::string& kind);

    std::string design_name_;
    IfcSchema schema_;
    StepFile file_;
    StepValue owner_ = step_unset, context_, body_, reference_;
    std::map<std::string, StepValue> styles_;
    std::map<std::string, std::vector<StepValue>> materials_;
};

} // namespace coilwright
