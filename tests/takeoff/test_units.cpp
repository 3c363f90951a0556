// A building takes the same, whatever unit its design is written in.
#include "geometry/takeoff/days.hpp"
#include "geometry/takeoff/take_off.hpp"
#include "tests/takeoff/planned.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>

using namespace coilwright;
using namespace coilwright::testing;

TEST_CASE("the same design in feet and in metres takes the same") {
    const std::string feet = R"(coilwright = 1
name = "Units"
unit = "ft"
[course]
height = "5 in"
[tube.main]
lay_flat = "17 in"
[dome.one]
inside_diameter = 10
springline = "20 in"
profile = { kind = "pointed", rise = 10 }
tube = "main"
[opening.door]
in = "one"
use = "door"
bearing = 90
width = "30 in"
sill = 0
height = "75 in"
head = { kind = "pointed" }
[opening.light]
in = "one"
use = "window"
bearing = 0
width = "24 in"
sill = "40 in"
height = "30 in"
head = { kind = "square", lintel = { kind = "timber", bearing = "12 in", depth = "5 in" } }
[opening.round]
in = "one"
use = "vent"
bearing = 180
width = "12 in"
sill = "60 in"
height = "12 in"
head = { kind = "circle" }
[tunnel.porch]
from = "one"
bearing = 270
width = "36 in"
springline = "45 in"
profile = { kind = "pointed", rise = "36 in" }
reach = "10 ft"
tube = "main"
[buttress.pier]
on = "one"
bearings = [45, 135]
width = "34 in"
height = "40 in"
projection = "30 in"
projection_top = "15 in"
[sleeve.water]
in = "one"
bearing = 215
height = "10 in"
diameter = "4 in"
[finish]
inside_plaster = "1 in"
outside_plaster = "2 in"
floor_build_up = "4 in"
[trench]
gravel_depth = "6 in"
)";
    const std::string metres = R"(coilwright = 1
name = "Units"
unit = "m"
[course]
height = 0.127
[tube.main]
lay_flat = "43.18 cm"
[dome.one]
inside_diameter = 3.048
springline = "50.8 cm"
profile = { kind = "pointed", rise = 3.048 }
tube = "main"
[opening.door]
in = "one"
use = "door"
bearing = 90
width = "762 mm"
sill = 0
height = 1.905
head = { kind = "pointed" }
[opening.light]
in = "one"
use = "window"
bearing = 0
width = "609.6 mm"
sill = 1.016
height = "76.2 cm"
head = { kind = "square", lintel = { kind = "timber", bearing = 0.3048, depth = "127 mm" } }
[opening.round]
in = "one"
use = "vent"
bearing = 180
width = 0.3048
sill = "1524 mm"
height = 0.3048
head = { kind = "circle" }
[tunnel.porch]
from = "one"
bearing = 270
width = "914.4 mm"
springline = "1.143 m"
profile = { kind = "pointed", rise = "91.44 cm" }
reach = 3.048
tube = "main"
[buttress.pier]
on = "one"
bearings = [45, 135]
width = "86.36 cm"
height = 1.016
projection = "762 mm"
projection_top = "38.1 cm"
[sleeve.water]
in = "one"
bearing = 215
height = "254 mm"
diameter = "101.6 mm"
[finish]
inside_plaster = "25.4 mm"
outside_plaster = "50.8 mm"
floor_build_up = "101.6 mm"
[trench]
gravel_depth = "152.4 mm"
)";
    const BuildingPlan in_feet = planned(feet), in_metres = planned(metres);
    const TakeOff a = take_off(in_feet, plastered_works());
    const TakeOff b = take_off(in_metres, plastered_works());
    const auto same = [](double one, double other) {
        return std::abs(one - other) <= 1e-9 * std::max(1.0, std::abs(one));
    };
    REQUIRE(a.items.size() == b.items.size());
    CHECK(a.items.size() > 14);
    for (std::size_t i = 0; i < a.items.size(); ++i) {
        CAPTURE(a.items[i].code);
        CHECK(a.items[i].code == b.items[i].code);
        CHECK(same(a.items[i].amount, b.items[i].amount));
        CHECK(same(a.items[i].to_buy, b.items[i].to_buy));
        CHECK(a.items[i].packs == b.items[i].packs);
    }
    REQUIRE(a.lines.size() == b.lines.size());
    for (std::size_t i = 0; i < a.lines.size(); ++i) {
        CAPTURE(a.lines[i].item, a.lines[i].element);
        CHECK(a.lines[i].item == b.lines[i].item);
        CHECK(a.lines[i].element == b.lines[i].element);
        CHECK(same(a.lines[i].amount, b.lines[i].amount));
    }
    REQUIRE(a.courses.size() == b.courses.size());
    for (std::size_t i = 0; i < a.courses.size(); ++i) {
        CHECK(same(a.courses[i].tube_net, b.courses[i].tube_net));
        CHECK(same(a.courses[i].soil.loose, b.courses[i].soil.loose));
    }
    for (const char* const code : {"lintel-timber", "glass", "door-leaf", "sleeve-pipe"}) {
        CAPTURE(code);
        CHECK(amount(a, code) > 0);
    }
    const DayPlan days = plan_days(in_feet, a, plastered_works());
    const DayPlan others = plan_days(in_metres, b, plastered_works());
    REQUIRE(days.days.size() == others.days.size());
    for (std::size_t i = 0; i < days.days.size(); ++i)
        CHECK(same(days.days[i].fill_loose, others.days[i].fill_loose));
}
