// Rooms of a building: floors that are counted once, and what tunnels have of their own.
#include "geometry/design/read_design.hpp"
#include "geometry/plan/building_rooms.hpp"
#include "geometry/plan/plan_building.hpp"
#include "tests/support/files.hpp"

#include <catch2/catch.hpp>
#include <cmath>

using namespace coilwright;

namespace {

PlanExpression discs(const std::vector<Disc>& all) {
    PlanExpression plan;
    for (const Disc& disc : all) {
        plan.terms.push_back({"", static_cast<int>(plan.shapes.size()), {}});
        plan.shapes.push_back(disc);
    }
    return plan;
}

BuildingPlan demo(const std::string& name) {
    DesignReading reading = read_design(testing::whole_building_text(name));
    return plan_building(std::move(reading.design), std::move(reading.diagnostics));
}

} // namespace

TEST_CASE("rooms: joined domes' floor is counted once") {
    // Two circles of radius 1 a unit apart: 2 pi - (2 pi/3 - sqrt 3/2), by the lens of two circles.
    CHECK(plan_area(discs({{{0, 0}, 1}, {{1, 0}, 1}})) ==
          Approx(2 * pi - (2 * pi / 3 - std::sqrt(3.0) / 2)));
    CHECK(plan_area(discs({{{0, 0}, 1}, {{3, 0}, 1}})) == Approx(2 * pi));
    CHECK(plan_area(discs({{{0, 0}, 2}, {{0.5, 0}, 1}})) == Approx(4 * pi));
    CHECK(plan_area(discs({{{0, 0}, 2}, {{1, 0}, 1}})) == Approx(4 * pi)); // touching from within
    CHECK(plan_area(discs({{{0, 0}, 1}, {{0, 0}, 1}})) == Approx(pi));
    // A wall of radius 2 that stands in a room of radius 3, poles 4 apart, takes a lens of 1.9898.
    PlanExpression less = discs({{{0, 0}, 3}});
    less.shapes.push_back(Disc{{4, 0}, 2});
    less.terms.front().less.push_back(1);
    CHECK(plan_area(less) == Approx(26.284542063587203));
    CHECK(plan_area({}) == 0);
}

TEST_CASE("rooms: one a dome or open plan, and one a tunnel, of the floors that headroom tells") {
    const BuildingPlan plan = demo("retreat");
    REQUIRE(plan.sound());
    const std::vector<BuildingRoom> rooms =
        building_rooms(plan.schedule.building, plan.design.finish.inside_plaster);
    REQUIRE(rooms.size() == 4); // bath, room; entry, passage
    for (std::size_t i = 0; i < 2; ++i) {
        CHECK(rooms[i].id == plan.headroom[i].dome);
        CHECK(rooms[i].domes == std::vector<std::string>{rooms[i].id});
        CHECK(rooms[i].floor.area == Approx(plan.headroom[i].floor_area).epsilon(1e-9));
        CHECK(rooms[i].height == Approx(plan.headroom[i].at_pole));
        CHECK(rooms[i + 2].id == plan.tunnel_headroom[i].tunnel);
        CHECK(rooms[i + 2].domes.empty());
        CHECK(rooms[i + 2].floor.area == Approx(plan.tunnel_headroom[i].floor_area).epsilon(1e-9));
        CHECK(rooms[i + 2].height == Approx(plan.tunnel_headroom[i].at_middle));
    }
    const BuildingPlan home = demo("home");
    const std::vector<BuildingRoom> open =
        building_rooms(home.schedule.building, home.design.finish.inside_plaster);
    REQUIRE(open.size() == 3); // the open plan; two tunnels
    CHECK(open[0].domes.size() == 4);
    double alone = 0;
    for (const Headroom& dome : home.headroom)
        alone += dome.floor_area;
    CHECK(open[0].floor.area < alone - 1);
    CHECK(open[0].floor.area > 0.7 * alone);
}

TEST_CASE("rooms: a hemisphere on the floor holds 2 pi r3/3") {
    DesignReading reading = read_design(R"(coilwright = 1
name = "Half a ball"
unit = "m"
[course]
height = "10 cm"
[tube.main]
lay_flat = "50 cm"
[dome.ball]
inside_diameter = 6
at = [0, 0]
springline = 0
profile = { kind = "round" }
top = { kind = "skylight", diameter = "90 cm", curb = 0 }
tube = "main"
)");
    const BuildingPlan plan =
        plan_building(std::move(reading.design), std::move(reading.diagnostics));
    REQUIRE(plan.sound());
    const std::vector<BuildingRoom> rooms = building_rooms(plan.schedule.building, 0);
    REQUIRE(rooms.size() == 1);
    CHECK(rooms[0].floor.area == Approx(9 * pi).epsilon(1e-9));
    // Cut off at its eye: the segment of a ball up to there, and what stands in the eye above it.
    const DomeForm& dome = plan.schedule.building.domes.front();
    const double eye = dome.last_ring_radius, up = std::sqrt(9 - eye * eye);
    const double ball = pi * (9 * up - up * up * up / 3);
    CHECK(rooms[0].volume > ball * 0.999);
    CHECK(rooms[0].volume < ball * 1.02);
}
