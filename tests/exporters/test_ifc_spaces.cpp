// Rooms, floor and sleeves in IFC.
#include "exporters/schedule_json.hpp"
#include "geometry/design/read_design.hpp"
#include "geometry/plan/building_rooms.hpp"
#include "tests/exporters/read_ifc.hpp"
#include "tests/exporters/scratch.hpp"

#include <algorithm>
#include <catch2/catch.hpp>

namespace coilwright {

using nlohmann::json;

namespace {

/// What two circles share.
double lens(double a, double b, double apart) {
    const double x = (apart * apart + a * a - b * b) / (2 * apart);
    return a * a * std::acos(x / a) - x * std::sqrt(a * a - x * x) +
           b * b * std::acos((apart - x) / b) -
           (apart - x) * std::sqrt(b * b - (apart - x) * (apart - x));
}

const ReadBuilding& demo(const std::string& name) {
    return *std::find_if(demo_buildings().begin(), demo_buildings().end(),
                         [&](const ReadBuilding& one) { return one.name == name; });
}

json space_of(const ReadBuilding& building, const std::string& long_name) {
    for (const json& space : building.of_type("IfcSpace"))
        if (space.at("LongName") == long_name)
            return space;
    FAIL("no space " + long_name);
    return {};
}

} // namespace

TEST_CASE("IFC: a space a room of the schedule, of its floor, height and volume") {
    for (const ReadBuilding& building : demo_buildings()) {
        CAPTURE(building.name);
        const json rooms = json::parse(schedule_json(building.plan)).at("rooms");
        CHECK(building.of_type("IfcSpace").size() == rooms.size());
        for (const json& room : rooms) {
            std::string name = room.at("tunnel").is_null() ? "" : room.at("tunnel");
            for (const json& dome : room.at("domes"))
                name += (name.empty() ? "" : " + ") + dome.get<std::string>();
            CAPTURE(name);
            const json space = space_of(building, name);
            CHECK(building.quantity(space, "NetFloorArea") ==
                  Approx(room.at("floor").at("area").get<double>()).margin(2e-6));
            const double volume = room.at("volume");
            CHECK(building.quantity(space, "NetVolume") == Approx(volume).margin(2e-6));
            // Bodies of one room that overlapped would hold more together than the room does.
            CHECK(volume_of_body(building, space) == Approx(volume).epsilon(2e-3));
            CHECK(building.body(space)->at("high")[2].get<double>() ==
                  Approx(room.at("height").get<double>()).margin(1e-4));
            CHECK(building.body(space)->at("low")[2].get<double>() == Approx(0).margin(1e-6));
        }
    }
}

TEST_CASE("IFC: the home lists four walls with their courses, four roofs, all openings filled") {
    const ReadBuilding& home = demo("home.toml, IFC4");
    std::map<std::string, int> walls, roofs;
    for (const json& relation : home.of_type("IfcRelAggregates")) {
        const json& whole = home.line(relation.at("RelatingObject"));
        if (whole.at("type") != "IfcWall" && whole.at("type") != "IfcRoof")
            continue;
        int courses = 0;
        for (const json& part : relation.at("RelatedObjects"))
            courses += home.line(part).at("ObjectType") == "COURSE";
        (whole.at("type") == "IfcWall" ? walls : roofs)[whole.at("Description")] = courses;
    }
    for (const DomeForm& dome : home.plan.schedule.building.domes) {
        CAPTURE(dome.id);
        int below = 0, above = 0; // the springline
        for (int n = dome.foundation + 1; n <= dome.courses(); ++n)
            ++(dome.course_middle(n) < dome.springline ? below : above);
        CHECK(walls.at("Wall of dome " + dome.id) == below);
        CHECK(roofs.at("Roof of dome " + dome.id) == above);
    }
    CHECK(home.plan.schedule.building.domes.size() == 4);
    std::size_t niches = 0;
    for (const OpeningPlan& opening : home.plan.schedule.openings)
        niches += opening.form.use == OpeningUse::niche;
    CHECK(home.of_type("IfcRelFillsElement").size() + niches ==
          home.of_type("IfcOpeningElement").size());
    // Its open plan: four circles less the lenses in which the small ones meet the hall.
    const BuildingForm& form = home.plan.schedule.building;
    const double plaster = home.plan.design.finish.inside_plaster;
    const DomeForm& hall = *find_dome(form, "hall");
    double area = 0;
    for (const DomeForm& dome : form.domes) {
        const double r = dome.profile.half_span - plaster;
        area += pi * r * r;
        if (dome.id != "hall")
            area -= lens(hall.profile.half_span - plaster, r, (dome.at - hall.at).norm());
    }
    CHECK(home.quantity(space_of(home, "bath + cook + hall + sleep"), "NetFloorArea") ==
          Approx(area).margin(1e-6));
}

TEST_CASE("IFC: a room in which another's wall stands is less by that wall") {
    const std::string toml = R"(coilwright = 1
name = "Kept wall"
unit = "m"
[course]
height = "13 cm"
[tube.main]
lay_flat = "45 cm"
[dome.big]
at = [0, 0]
inside_diameter = 4
springline = "130 cm"
profile = { kind = "pointed", rise = 4 }
tube = "main"
[dome.small]
at = [3.6, 0]
inside_diameter = 3
springline = "130 cm"
profile = { kind = "pointed", rise = 3 }
tube = "main"
[join.both]
between = ["big", "small"]
keep = "big"
[finish]
inside_plaster = "3 cm"
)";
    DesignReading reading = read_design(toml);
    BuildingPlan plan = plan_building(std::move(reading.design), std::move(reading.diagnostics));
    for (const Diagnostic& fault : plan.diagnostics)
        FAIL(fault.message);
    const ReadBuilding building = building_of(std::move(plan), IfcSchema::ifc4);
    const DomeForm& big = *find_dome(building.plan.schedule.building, "big");
    const json small = space_of(building, "small");
    const double r = 1.5 - 0.03, wall = 2 + big.width + 0.03;
    CHECK(building.quantity(small, "NetFloorArea") ==
          Approx(pi * r * r - lens(r, wall, 3.6)).margin(1e-6));
    CHECK(volume_of_body(building, small) ==
          Approx(building.quantity(small, "NetVolume")).epsilon(5e-3));
    CHECK(building.quantity(space_of(building, "big"), "NetFloorArea") ==
          Approx(pi * (2 - 0.03) * (2 - 0.03)).margin(1e-6));
}

TEST_CASE("IFC: there is always a floor, as a face where its thickness is not given") {
    for (const ReadBuilding& building : demo_buildings()) {
        CAPTURE(building.name);
        const std::vector<json> slabs = building.of_type("IfcSlab");
        REQUIRE(slabs.size() == 1);
        CHECK(building.quantity(slabs[0], "NetArea") ==
              Approx(building.plan.schedule.ground.floor.area).epsilon(1e-6));
        CHECK(building.body(slabs[0])->at("high")[2].get<double>() == Approx(0).margin(1e-6));
        if (building.plan.design.finish.floor_build_up <= 0)
            CHECK(building.body(slabs[0])->at("low")[2].get<double>() == Approx(0).margin(1e-6));
    }
}

TEST_CASE("IFC: sleeves are parts of the wall or footing that they run through") {
    int count = 0;
    for (const ReadBuilding& building : demo_buildings()) {
        CAPTURE(building.name);
        const auto& sleeves = building.plan.schedule.sleeves;
        const std::vector<json> parts = building.parts("SLEEVE");
        CHECK(parts.size() == sleeves.size());
        for (const SleevePlan& sleeve : sleeves)
            for (const json& part : parts)
                if (part.at("Description") == "Sleeve " + sleeve.form.id) {
                    ++count;
                    const auto properties = building.properties(part);
                    CHECK(properties.at("Diameter").get<double>() ==
                          Approx(sleeve.form.diameter).margin(1e-6));
                    const json& body = *building.body(part);
                    const double low = body.at("low")[2], high = body.at("high")[2];
                    CHECK((low + high) / 2 == Approx(sleeve.mark()).margin(1e-4));
                    CHECK(high - low == Approx(sleeve.form.diameter).margin(1e-4));
                    // A polygon of 24 sides, at least as long as the tube is wide.
                    const double section =
                        12 * std::pow(sleeve.form.diameter / 2, 2) * std::sin(pi / 12);
                    CHECK(body.at("volume").get<double>() > 0.3 * section);
                    CHECK(body.at("volume").get<double>() < 0.8 * section);
                }
    }
    CHECK(count >= 10);
}

} // namespace coilwright
