// The IFC of the demo designs, read back by web-ifc: elements and their courses.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/building_rooms.hpp"
#include "geometry/plan/fit.hpp"
#include "geometry/plan/lay.hpp"
#include "tests/exporters/read_ifc.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <set>

namespace coilwright {

using nlohmann::json;

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
        const std::vector<json> parts = building.parts("COURSE");
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
            CHECK(properties.count("Fill") == (building.plan.design.fills.empty() ? 0 : 1));
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
                if (part.at("ObjectType") == "SLEEVE")
                    continue;
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
    for (const json& part : building.parts("COURSE"))
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
        DesignReading reading = read_design(bytes_of(COILWRIGHT_SOURCE_DIR "/models/" + name));
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
        CHECK(building.of_type("IfcSpace").size() == rooms_of(form).size() + form.tunnels.size());
        CHECK(building.of_type("IfcSlab").size() == 1);
        CHECK(building.of_type("IfcBeam").size() == building.plan.schedule.lintels.size());
        std::size_t holes = 0, niches = 0, bags = 0, bags_read = 0;
        for (const OpeningPlan& opening : building.plan.schedule.openings) {
            ++holes;
            niches += opening.form.use == OpeningUse::niche;
        }
        for (const DomeForm& dome : form.domes)
            holes += dome.cap_courses == 0; // a skylight
        CHECK(building.of_type("IfcOpeningElement").size() == holes);
        CHECK(building.of_type("IfcRelFillsElement").size() == holes - niches);
        for (const Fan& fan : building.plan.schedule.fans)
            bags += static_cast<std::size_t>(fan.count);
        double volume = 0, made_of = 0;
        for (const json& part : building.of_type("IfcBuildingElementPart")) {
            bags_read += part.at("ObjectType") == "FAN BAG";
            if (part.at("ObjectType") != "SLEEVE")
                volume += volume_of_body(building, part);
        }
        CHECK(bags_read == bags);
        for (const SolidPart& part : building.model.parts)
            if (part.course > 0 || part.slug.find("_FAN") != std::string::npos)
                made_of += part.volume;
        CHECK(volume == Approx(made_of).epsilon(1e-4));
    }
}

} // namespace coilwright
