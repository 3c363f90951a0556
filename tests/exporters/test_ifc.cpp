// The IFC of the demo designs, read back by web-ifc (npm), which shares nothing with the writer;
// then the rules of the standard and of the implementers' agreements that need no network.
#include "exporters/ifc.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/exporters/sample_plans.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

namespace coilwright {
namespace {

using nlohmann::json;

json read_ifc(const std::string& text) {
    const ScratchDirectory scratch;
    put_bytes(scratch.path() / "building.ifc", text);
    return json::parse(output_of({"node", COILWRIGHT_NODE_DIRECTORY "/read_ifc.js",
                                  (scratch.path() / "building.ifc").string()}));
}

struct ReadBuilding {
    std::string name, text;
    IfcSchema schema = IfcSchema::ifc4;
    BuildingPlan plan;
    SolidModel model;
    json lines = json::object(); // by id
    json bodies, holes;
    json wrong; // lines with more or fewer attributes than the schema has

    const json& line(const json& reference) const {
        return lines.at(std::to_string(reference.at("ref").get<int>()));
    }
    std::vector<json> of_type(const std::string& type) const {
        std::vector<json> found;
        for (const auto& [id, line] : lines.items())
            if (line.at("type") == type)
                found.push_back(line);
        return found;
    }
    const json* body(const json& line) const {
        const auto found = bodies.find(std::to_string(line.at("id").get<int>()));
        return found == bodies.end() ? nullptr : &*found;
    }
    /// A quantity of an element by the name that both schemas give it, or NaN.
    double quantity(const json& element, const std::string& wanted) const {
        for (const json& relation : of_type("IfcRelDefinesByProperties"))
            if (relation.at("RelatedObjects")[0].at("ref") == element.at("id")) {
                const json& set = line(relation.at("RelatingPropertyDefinition"));
                if (set.at("type") != "IfcElementQuantity")
                    continue;
                for (const json& one : set.at("Quantities"))
                    if (line(one).at("Name") == wanted)
                        for (const auto& [key, value] : line(one).items())
                            if (key.size() > 5 && key.substr(key.size() - 5) == "Value")
                                return value;
            }
        return std::nan("");
    }
    std::map<std::string, json> properties(const json& element) const {
        std::map<std::string, json> found;
        for (const json& relation : of_type("IfcRelDefinesByProperties"))
            if (relation.at("RelatedObjects")[0].at("ref") == element.at("id")) {
                const json& set = line(relation.at("RelatingPropertyDefinition"));
                if (set.at("type") == "IfcPropertySet")
                    for (const json& one : set.at("HasProperties"))
                        found[line(one).at("Name")] = line(one).at("NominalValue");
            }
        return found;
    }
};

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
        for (const std::string& name : demo_names())
            for (const IfcSchema schema : {IfcSchema::ifc4, IfcSchema::ifc2x3}) {
                made.push_back(building_of(demo_plan(name), schema));
                made.back().name = name + (schema == IfcSchema::ifc4 ? ", IFC4" : ", IFC2x3");
            }
        return made;
    }();
    return buildings;
}

/// Those of one dome and nothing beside it; whole buildings have a test of their own.
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

} // namespace

TEST_CASE("IFC: web-ifc finds each course of each element with its body, number and setting") {
    REQUIRE(plain_domes().size() >= 8);
    for (const ReadBuilding* one : plain_domes()) {
        const ReadBuilding& building = *one;
        CAPTURE(building.name);
        std::map<int, double> volumes, radii; // by course
        for (const SolidPart& part : building.model.parts)
            if (part.course > 0) {
                volumes[part.course] += part.volume;
                radii[part.course] = part.compass_radius;
            }
        const std::vector<json> parts = building.of_type("IfcBuildingElementPart");
        CHECK(parts.size() == volumes.size());
        for (const json& part : parts) {
            CAPTURE(part.at("Name").dump());
            const auto properties = building.properties(part);
            const int number = properties.at("CourseNumber");
            CHECK(volume_of_body(building, part) == Approx(volumes.at(number)).epsilon(1e-4));
            CHECK(building.quantity(part, "NetVolume") == Approx(volumes.at(number)).margin(1e-6));
            if (radii.at(number) > 0)
                CHECK(properties.at("CompassRadius").get<double>() ==
                      Approx(radii.at(number)).margin(1e-6));
            CHECK(properties.at("Tube") == building.plan.design.domes.front().tube);
            CHECK(properties.count("Fill") == 1);
            const Course& course =
                building.plan.schedule.courses.at(static_cast<std::size_t>(number - 1));
            const json& body = *building.body(part);
            CHECK(body.at("low")[2].get<double>() == Approx(course.bottom).margin(1e-4));
            CHECK(body.at("high")[2].get<double>() == Approx(course.top).margin(1e-4));
        }
    }
}

TEST_CASE(
    "IFC: below the floor lies the footing, up to the springline the wall, above it the roof") {
    REQUIRE(plain_domes().size() >= 8);
    for (const ReadBuilding* one : plain_domes()) {
        const ReadBuilding& building = *one;
        CAPTURE(building.name);
        const DomeForm& dome = building.plan.schedule.building.domes.front();
        std::map<std::string, int> count;
        for (const json& relation : building.of_type("IfcRelAggregates")) {
            const json& whole = building.line(relation.at("RelatingObject"));
            const std::string type = whole.at("type");
            if (type != "IfcFooting" && type != "IfcWall" && type != "IfcRoof")
                continue;
            CHECK(whole.at("Representation").is_null());
            CHECK(building.body(whole) == nullptr);
            double sum = 0;
            for (const json& reference : relation.at("RelatedObjects")) {
                const json& part = building.line(reference);
                CHECK(part.at("type") == "IfcBuildingElementPart");
                ++count[type];
                const auto properties = building.properties(part);
                const double bottom = properties.at("Bottom"), top = properties.at("Top");
                CHECK((top <= 1e-6) == (type == "IfcFooting"));
                if (type == "IfcRoof")
                    CHECK((bottom + top) / 2 >= dome.springline - 1e-6);
                if (type == "IfcWall")
                    CHECK((bottom + top) / 2 < dome.springline);
                sum += volume_of_body(building, part);
            }
            CHECK(building.quantity(whole, "NetVolume") == Approx(sum).epsilon(1e-4));
        }
        CHECK(count["IfcFooting"] == dome.foundation);
        CHECK(count["IfcFooting"] + count["IfcWall"] + count["IfcRoof"] == dome.courses());
        CHECK(building.of_type("IfcWall").size() == 1);
        CHECK(building.of_type("IfcRoof").size() == 1);
    }
}

TEST_CASE("IFC: every opening is filled by a door or a window of its size, and lies in its hole") {
    REQUIRE(plain_domes().size() >= 8);
    for (const ReadBuilding* one : plain_domes()) {
        const ReadBuilding& building = *one;
        CAPTURE(building.name);
        const auto& openings = building.plan.schedule.openings;
        CHECK(building.of_type("IfcOpeningElement").size() == openings.size());
        CHECK(building.of_type("IfcRelVoidsElement").size() == openings.size());
        std::map<int, int> filled;
        for (const json& relation : building.of_type("IfcRelFillsElement"))
            filled[relation.at("RelatedBuildingElement").at("ref")] =
                relation.at("RelatingOpeningElement").at("ref");
        CHECK(filled.size() == openings.size());
        for (const OpeningPlan& opening : openings) {
            CAPTURE(opening.form.id);
            const bool is_door = opening.form.use == OpeningUse::door;
            const json* filling = nullptr;
            for (const auto& [id, line] : building.lines.items())
                if (line.at("type") == (is_door ? "IfcDoor" : "IfcWindow") &&
                    line.at("Description") == word(opening.form.use) + " " + opening.form.id)
                    filling = &line;
            REQUIRE(filling);
            CHECK(filling->at("OverallWidth").get<double>() ==
                  Approx(2 * opening.form.half_width).margin(1e-6));
            CHECK(filling->at("OverallHeight").get<double>() ==
                  Approx(opening.form.top - opening.form.sill).margin(1e-6));
            const json& hole = building.lines.at(std::to_string(filled.at(filling->at("id"))));
            const json& edges = building.holes.at(std::to_string(hole.at("id").get<int>()));
            CHECK(edges.at("identifier") == "Reference"); // its hole is in the courses already
            CHECK(building.body(hole) == nullptr);
            REQUIRE(edges.at("edges").size() == 2);
            const json& frame = *building.body(*filling);
            CHECK(frame.at("volume").get<double>() > 0);
            // The frame's body is that of the models.
            double volume_of_frame = 0;
            for (const SolidPart& part : building.model.parts)
                if (part.title == "Frame of " + opening.form.id)
                    volume_of_frame += part.volume;
            CHECK(frame.at("volume").get<double>() == Approx(volume_of_frame).epsilon(1e-4));
            CHECK(frame.at("high")[2].get<double>() < opening.form.top + 1e-4);
            CHECK(frame.at("low")[2].get<double>() > opening.form.sill - 1e-4);
            // Both edges lie square to the bearing, as far apart as the hole is deep.
            const Vec2 pole = building.plan.schedule.building.domes.front().at;
            const Vec2 out = along(opening.form.bearing);
            double distance[2] = {}, low = 1e9, high = -1e9, across = 0;
            for (std::size_t k = 0; k < 2; ++k)
                for (const json& at : edges.at("edges")[k]) {
                    const Vec2 off = Vec2(at[0].get<double>(), at[1].get<double>()) - pole;
                    distance[k] = off.dot(out);
                    CHECK(off.dot(out) ==
                          Approx(edges.at("edges")[k][0][0].get<double>() * out.x() +
                                 edges.at("edges")[k][0][1].get<double>() * out.y() - pole.dot(out))
                              .margin(2e-6));
                    across = std::max(across, std::abs(off.x() * out.y() - off.y() * out.x()));
                    low = std::min(low, at[2].get<double>());
                    high = std::max(high, at[2].get<double>());
                }
            CHECK(distance[1] - distance[0] ==
                  Approx(building.quantity(hole, "Depth")).margin(1e-5));
            CHECK(across == Approx(opening.form.half_width).margin(1e-5));
            CHECK(low == Approx(opening.form.sill).margin(1e-5));
            CHECK(high == Approx(opening.form.top).margin(1e-5));
        }
    }
}

// The outline of a pointed head by its own formula: two arcs of radius (a^2 + h^2) / (2 a).
TEST_CASE("IFC: the hole of the store's door has the area of its outline") {
    const ReadBuilding& store =
        *std::find_if(demo_buildings().begin(), demo_buildings().end(),
                      [](const ReadBuilding& one) { return one.name == "grain-store.toml, IFC4"; });
    const OpeningForm& door = store.plan.schedule.openings.front().form;
    REQUIRE(door.head_kind == HeadKind::pointed);
    const double a = door.half_width, h = door.top - door.springing;
    const double rho = (a * a + h * h) / (2 * a), angle = std::asin(h / rho);
    const double head = 2 * (rho * rho * angle / 2 - (rho - a) * h / 2);
    const double area = 2 * a * (door.springing - door.sill) + head;
    int found = 0;
    for (const json& hole : store.of_type("IfcOpeningElement"))
        if (hole.at("Description") == "Hole for " + door.id) {
            ++found;
            CHECK(store.quantity(hole, "Area") == Approx(area).epsilon(2e-3));
        }
    CHECK(found == 1);
}

TEST_CASE("IFC: rooms have the floor area of the headroom table and a body of their volume") {
    for (const ReadBuilding& building : demo_buildings()) {
        CAPTURE(building.name);
        const std::vector<json> rooms = building.of_type("IfcSpace");
        REQUIRE(rooms.size() == building.plan.headroom.size());
        for (const Headroom& headroom : building.plan.headroom)
            for (const json& room : rooms)
                if (room.at("LongName") == headroom.dome) {
                    CHECK(building.quantity(room, "NetFloorArea") ==
                          Approx(headroom.floor_area).margin(1e-6));
                    const double volume = building.quantity(room, "NetVolume");
                    CHECK(volume_of_body(building, room) == Approx(volume).epsilon(2e-3));
                    CHECK(building.body(room)->at("high")[2].get<double>() ==
                          Approx(headroom.at_pole).margin(1e-4));
                }
    }
}

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
            const bool is_element = type == "IfcWall" || type == "IfcRoof" ||
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

TEST_CASE("IFC: lintels, floors and fills of a design are in it") {
    std::string toml = bytes_of(COILWRIGHT_SOURCE_DIR "/models/grain-store.toml");
    const auto put = [&](const std::string& from, const std::string& to) {
        const std::size_t at = toml.find(from);
        REQUIRE(at != std::string::npos);
        toml.replace(at, from.size(), to);
    };
    put("head = { kind = \"pointed\", rise = \"30 in\" }",
        "head = { kind = \"square\", lintel = { kind = \"concrete\" } }");
    put("[finish]", "[finish]\nfloor_build_up = \"4 in\"");
    toml += "\n[fill.base]\nkind = \"gravel\"\ncourses = [1, 4]\n[fill.main]\n"
            "stabiliser = \"cement\"\nratio = 0.1\n";
    DesignReading reading = read_design(toml);
    BuildingPlan plan = plan_building(std::move(reading.design), std::move(reading.diagnostics));
    for (const Diagnostic& fault : plan.diagnostics)
        FAIL(fault.message);
    const ReadBuilding building = building_of(std::move(plan), IfcSchema::ifc4);
    CHECK(building.wrong.empty());
    REQUIRE(building.of_type("IfcBeam").size() == 1);
    const json beam = building.of_type("IfcBeam")[0];
    const Lintel& lintel = building.plan.schedule.lintels.at(0);
    CHECK(beam.at("PredefinedType") == "LINTEL");
    CHECK(volume_of_body(building, beam) ==
          Approx(lintel.length * lintel.width * lintel.depth).epsilon(1e-4));
    CHECK(building.body(beam)->at("low")[2].get<double>() == Approx(lintel.bottom).margin(1e-5));
    // A concrete lintel of its own material; both fills are named.
    std::set<std::string> materials, fills;
    for (const json& material : building.of_type("IfcMaterial"))
        materials.insert(material.at("Name"));
    CHECK(materials.count("CONCRETE") == 1);
    for (const json& part : building.of_type("IfcBuildingElementPart"))
        fills.insert(building.properties(part).at("Fill").get<std::string>());
    CHECK(fills == std::set<std::string>{"base: gravel", "main: soil with cement"});
    // The floor: a disc of the inside diameter, 9 ft, and 4 in thick.
    REQUIRE(building.of_type("IfcSlab").size() == 1);
    const json slab = building.of_type("IfcSlab")[0];
    const double area = pi * 1.3716 * 1.3716;
    CHECK(building.quantity(slab, "NetArea") == Approx(area).epsilon(1e-5));
    CHECK(volume_of_body(building, slab) == Approx(area * 0.1016).epsilon(2e-3));
    CHECK(building.body(slab)->at("high")[2].get<double>() == Approx(0).margin(1e-6));
}

// The whole buildings of the plan's tests: domes, tunnels, buttresses, joins, fans, niches,
// lintels.
TEST_CASE("IFC: whole buildings have a wall, a roof and a room a dome, and every opening filled") {
    for (const std::string name : {"home.toml", "retreat.toml", "square-door.toml"}) {
        CAPTURE(name);
        DesignReading reading =
            read_design(bytes_of(COILWRIGHT_SOURCE_DIR "/models/" + name));
        REQUIRE(reading.diagnostics.empty());
        // Laid without asking whether the sheets can show it all.
        BuildingPlan made;
        made.design = fit(reading.design).design;
        made.schedule = lay(made.design);
        made.headroom = headroom(made.design, made.schedule);
        const ReadBuilding building = building_of(std::move(made), IfcSchema::ifc4);
        CHECK(building.wrong.empty());
        const BuildingForm& form = building.plan.schedule.building;
        std::map<std::string, std::size_t> roofs;
        for (const json& roof : building.of_type("IfcRoof"))
            ++roofs[roof.at("PredefinedType")];
        CHECK(roofs["DOME_ROOF"] == form.domes.size());
        CHECK(roofs["BARREL_ROOF"] == form.tunnels.size());
        CHECK(building.of_type("IfcWall").size() == form.domes.size() + form.tunnels.size());
        CHECK(building.of_type("IfcColumn").size() == form.buttresses.size());
        CHECK(building.of_type("IfcSpace").size() == form.domes.size());
        CHECK(building.of_type("IfcBeam").size() == building.plan.schedule.lintels.size());
        std::size_t holes = 0, niches = 0, bags = 0, bags_read = 0;
        for (const OpeningPlan& opening : building.plan.schedule.openings) {
            ++holes;
            niches += opening.form.use == OpeningUse::niche;
        }
        CHECK(building.of_type("IfcOpeningElement").size() == holes);
        CHECK(building.of_type("IfcRelFillsElement").size() == holes - niches);
        for (const Fan& fan : building.plan.schedule.fans)
            bags += static_cast<std::size_t>(fan.count);
        double volume = 0, made_of = 0;
        for (const json& part : building.of_type("IfcBuildingElementPart")) {
            bags_read += part.at("ObjectType") == "FAN BAG";
            volume += volume_of_body(building, part);
        }
        CHECK(bags_read == bags);
        for (const SolidPart& part : building.model.parts)
            if (part.course > 0 || part.slug.find("_FAN") != std::string::npos)
                made_of += part.volume;
        CHECK(volume == Approx(made_of).epsilon(1e-4));
    }
}

TEST_CASE("IFC: a change to one window leaves every other GlobalId as it was") {
    const auto guids = [](const std::string& text) {
        std::map<std::string, std::string> found; // by identity, the line's values
        for (std::size_t at = 0; (at = text.find("('", at)) != std::string::npos; ++at) {
            const std::string guid = text.substr(at + 2, 22);
            if (text.compare(at + 24, 2, "',") == 0)
                found[guid] = guid;
        }
        return found;
    };
    const auto text_of = [](const std::string& toml) {
        DesignReading reading = read_design(toml);
        BuildingPlan plan =
            plan_building(std::move(reading.design), std::move(reading.diagnostics));
        REQUIRE(plan.sound());
        return ifc_text(plan, courses_model(plan.schedule, 0.01).model, IfcSchema::ifc4);
    };
    std::string toml = bytes_of(COILWRIGHT_SOURCE_DIR "/models/grain-store.toml");
    const auto before = guids(text_of(toml));
    CHECK(before.size() > 100);
    // Wider, and renamed with another that comes first in the file's order.
    const std::size_t window = toml.find("[opening.west]");
    REQUIRE(window != std::string::npos);
    const std::size_t width = toml.find("width = \"", window);
    std::string wider = toml;
    wider.replace(width, toml.find('\n', width) - width, "width = \"18 in\"");
    REQUIRE(wider != toml);
    CHECK(guids(text_of(wider)) == before);
    std::string renamed = toml;
    renamed.replace(window, 14, "[opening.alpha]");
    const auto after = guids(text_of(renamed));
    CHECK(after.size() == before.size());
    std::size_t kept = 0;
    for (const auto& [guid, same] : before)
        kept += after.count(guid);
    // What goes with the name: hole, window, their sets and relations.
    CHECK(before.size() - kept > 4);
    CHECK(before.size() - kept < 16);
}

} // namespace coilwright
