// An IFC file of ours as web-ifc (npm) reads it, which shares nothing with the writer.
#pragma once

#include "exporters/ifc.hpp"
#include "tests/exporters/sample_plans.hpp"

#include <cmath>
#include <map>
#include <nlohmann/json.hpp>
#include <string>
#include <vector>

namespace coilwright {

struct ReadBuilding {
    std::string name, text;
    IfcSchema schema = IfcSchema::ifc4;
    BuildingPlan plan;
    SolidModel model;
    nlohmann::json lines = nlohmann::json::object(); // by id
    nlohmann::json bodies, holes;
    nlohmann::json wrong; // lines with more or fewer attributes than the schema has

    const nlohmann::json& line(const nlohmann::json& reference) const {
        return lines.at(std::to_string(reference.at("ref").get<int>()));
    }
    std::vector<nlohmann::json> of_type(const std::string& type) const {
        std::vector<nlohmann::json> found;
        for (const auto& [id, line] : lines.items())
            if (line.at("type") == type)
                found.push_back(line);
        return found;
    }
    /// Parts of walls, roofs and footings by their ObjectType: "COURSE", "FAN BAG", "SLEEVE".
    std::vector<nlohmann::json> parts(const std::string& kind) const {
        std::vector<nlohmann::json> found;
        for (const nlohmann::json& part : of_type("IfcBuildingElementPart"))
            if (part.at("ObjectType") == kind)
                found.push_back(part);
        return found;
    }
    const nlohmann::json* body(const nlohmann::json& line) const {
        const auto found = bodies.find(std::to_string(line.at("id").get<int>()));
        return found == bodies.end() ? nullptr : &*found;
    }
    /// A quantity of an element by the name that both schemas give it, or NaN.
    double quantity(const nlohmann::json& element, const std::string& wanted) const {
        for (const nlohmann::json& relation : of_type("IfcRelDefinesByProperties"))
            if (relation.at("RelatedObjects")[0].at("ref") == element.at("id")) {
                const nlohmann::json& set = line(relation.at("RelatingPropertyDefinition"));
                if (set.at("type") != "IfcElementQuantity")
                    continue;
                for (const nlohmann::json& one : set.at("Quantities"))
                    if (line(one).at("Name") == wanted)
                        for (const auto& [key, value] : line(one).items())
                            if (key.size() > 5 && key.substr(key.size() - 5) == "Value")
                                return value;
            }
        return std::nan("");
    }
    std::map<std::string, nlohmann::json> properties(const nlohmann::json& element) const {
        std::map<std::string, nlohmann::json> found;
        for (const nlohmann::json& relation : of_type("IfcRelDefinesByProperties"))
            if (relation.at("RelatedObjects")[0].at("ref") == element.at("id")) {
                const nlohmann::json& set = line(relation.at("RelatingPropertyDefinition"));
                if (set.at("type") == "IfcPropertySet")
                    for (const nlohmann::json& one : set.at("HasProperties"))
                        found[line(one).at("Name")] = line(one).at("NominalValue");
            }
        return found;
    }
};

/// Written from the courses within 1 cm, read back; checks the schema of what was read.
ReadBuilding building_of(BuildingPlan plan, IfcSchema schema);

/// Every demo design in both schemas.
const std::vector<ReadBuilding>& demo_buildings();
/// Those of one dome and nothing beside it; whole buildings have tests of their own.
std::vector<const ReadBuilding*> plain_domes();
/// What web-ifc finds of the body of a line, or NaN.
double volume_of_body(const ReadBuilding& building, const nlohmann::json& line);

} // namespace coilwright
