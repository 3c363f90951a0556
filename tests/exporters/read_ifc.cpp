#include "tests/exporters/read_ifc.hpp"

#include "tests/exporters/scratch.hpp"

#include <catch2/catch.hpp>

namespace coilwright {

using nlohmann::json;

namespace {

json read_ifc(const std::string& text) {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "building.ifc", text);
    return json::parse(output_of({"node", COILWRIGHT_NODE_DIRECTORY "/read_ifc.js",
                                  (scratch.path() / "building.ifc").string()}));
}

} // namespace

ReadBuilding building_of(BuildingPlan plan, IfcSchema schema) {
    ReadBuilding building;
    building.schema = schema;
    building.plan = std::move(plan);
    SolidResult courses = courses_model(building.plan.schedule, 0.01);
    REQUIRE(courses.faults.empty());
    building.model = std::move(courses.model);
    building.text = ifc_text(building.plan, building.model, schema);
    const json read = read_ifc(building.text);
    CHECK(read.at("schema") == (schema == IfcSchema::ifc4 ? "IFC4" : "IFC2X3"));
    for (const json& line : read.at("lines"))
        building.lines[std::to_string(line.at("id").get<int>())] = line;
    building.bodies = read.at("bodies");
    building.holes = read.at("holes");
    building.wrong = read.at("wrong");
    return building;
}

const std::vector<ReadBuilding>& demo_buildings() {
    static const std::vector<ReadBuilding> buildings = [] {
        std::vector<ReadBuilding> made;
        for (const std::string& name : demo_files())
            for (const IfcSchema schema : {IfcSchema::ifc4, IfcSchema::ifc2x3}) {
                made.push_back(building_of(demo_plan(name), schema));
                made.back().name = name + (schema == IfcSchema::ifc4 ? ", IFC4" : ", IFC2x3");
            }
        return made;
    }();
    return buildings;
}

std::vector<const ReadBuilding*> plain_domes() {
    std::vector<const ReadBuilding*> plain;
    for (const ReadBuilding& building : demo_buildings()) {
        const BuildingForm& form = building.plan.schedule.building;
        if (form.domes.size() == 1 && form.tunnels.empty() && form.buttresses.empty())
            plain.push_back(&building);
    }
    return plain;
}

double volume_of_body(const ReadBuilding& building, const json& line) {
    const json* body = building.body(line);
    return body ? body->at("volume").get<double>() : std::nan("");
}

} // namespace coilwright
