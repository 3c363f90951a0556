// The rules of the standard and of the implementers' agreements that need no network.
#include "geometry/design/read_design.hpp"
#include "tests/exporters/read_ifc.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

namespace coilwright {

using nlohmann::json;

TEST_CASE("IFC: the rules of the standard hold") {
    for (const ReadBuilding& building : demo_buildings()) {
        CAPTURE(building.name, building.wrong.dump());
        CHECK(building.wrong.empty()); // every line has its schema's number of attributes
        std::set<std::string> guids;
        std::map<int, int> contained, aggregated;
        for (const auto& [id, line] : building.lines.items()) {
            const std::string type = line.at("type");
            CHECK(type.find("Proxy") == std::string::npos);
            if (line.contains("GlobalId")) {
                const std::string guid = line.at("GlobalId");
                CHECK(guid.size() == 22);
                CHECK((guid[0] >= '0' && guid[0] <= '3'));
                CHECK(guids.insert(guid).second);
                CHECK(line.at("OwnerHistory").is_null() == (building.schema == IfcSchema::ifc4));
            }
            if (type == "IfcRelContainedInSpatialStructure") {
                CHECK(building.line(line.at("RelatingStructure")).at("type") ==
                      "IfcBuildingStorey");
                for (const json& element : line.at("RelatedElements"))
                    ++contained[element.at("ref")];
            }
            if (type == "IfcRelAggregates")
                for (const json& part : line.at("RelatedObjects"))
                    ++aggregated[part.at("ref")];
        }
        // Each element is in the storey or a part of another, once; holes are in neither.
        for (const auto& [id, line] : building.lines.items()) {
            const std::string type = line.at("type");
            CAPTURE(type, id);
            const int number = line.at("id");
            const bool is_part = type == "IfcBuildingElementPart" || type == "IfcSpace" ||
                                 type == "IfcSite" || type == "IfcBuilding" ||
                                 type == "IfcBuildingStorey";
            const bool is_element = type == "IfcWall" || type == "IfcRoof" || type == "IfcColumn" ||
                                    type == "IfcFooting" || type == "IfcDoor" ||
                                    type == "IfcWindow" || type == "IfcBeam" || type == "IfcSlab";
            if (is_part || is_element || type == "IfcOpeningElement") {
                CHECK(aggregated[number] == (is_part ? 1 : 0));
                CHECK(contained[number] == (is_element ? 1 : 0));
            }
        }
        CHECK(building.of_type("IfcProject").size() == 1);
        CHECK(building.of_type("IfcProject")[0].at("Name") == building.plan.schedule.name);
        std::size_t bodies = 0, styled = building.of_type("IfcStyledItem").size();
        for (const SolidPart& part : building.model.parts)
            bodies += part.course > 0;
        CHECK(styled >= bodies + building.plan.schedule.openings.size());
        CHECK(std::all_of(building.text.begin(), building.text.end(),
                          [](char c) { return (c >= 0x20 && c < 0x7f) || c == '\n'; }));
    }
}

TEST_CASE("IFC: units are metres, and up is z") {
    for (const ReadBuilding& building : demo_buildings()) {
        std::map<std::string, std::string> units;
        for (const json& unit : building.of_type("IfcSIUnit")) {
            CHECK(unit.at("Prefix").is_null());
            units[unit.at("UnitType")] = unit.at("Name");
        }
        CHECK(units == std::map<std::string, std::string>{{"LENGTHUNIT", "METRE"},
                                                          {"AREAUNIT", "SQUARE_METRE"},
                                                          {"VOLUMEUNIT", "CUBIC_METRE"},
                                                          {"PLANEANGLEUNIT", "RADIAN"}});
    }
}

} // namespace coilwright
