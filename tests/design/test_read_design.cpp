// Every key of the format lands in its field, in SI, and every key left out has the default that
// docs/reference/design-file.md states. Inches are 25.4 mm exactly.
#include "tests/design/whole_design.hpp"

#include <catch2/catch.hpp>

#include <clocale>
#include <fstream>
#include <iterator>

using namespace coilwright;

namespace {

constexpr double in = 0.0254;

const Design& whole() {
    static const DesignReading reading = read_design(whole_design);
    REQUIRE(codes_of(reading) == "");
    return reading.design;
}

std::string file_text(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

} // namespace

TEST_CASE("head, course and tubes are read") {
    const Design& d = whole();
    CHECK(d.format == 1);
    CHECK(d.name == "Grain store and bath, Alder Flats");
    CHECK(d.unit == DisplayUnit::feet);
    CHECK(d.course.height == 0.127);
    CHECK(d.course.foundation == 4);
    CHECK(d.course.end_allowance == Approx(9 * in));
    CHECK(d.course.longest_tube == Approx(28 * 12 * in));
    CHECK(d.course.joint_lap == Approx(20 * in));
    CHECK(d.course.least_inside_radius.value() == Approx(8 * in));
    CHECK(d.course.curve == CutCurve::centre);
    CHECK(d.course.edge == TubeEdge::square);
    CHECK(d.course.tamp_gap == Approx(0.5 * in));
    CHECK(d.course.strike_age_days == 10);
    CHECK(d.course.sound);
    REQUIRE(d.tubes.size() == 2);
    CHECK(d.tubes[0].id == "main");
    CHECK(d.tubes[0].lay_flat == Approx(17 * in));
    CHECK(d.tubes[0].tamped_width.value() == Approx(15 * in));
    CHECK(d.tubes[0].roll == Approx(304.8));
    CHECK(d.tubes[0].place.line == 18);
    CHECK(d.tubes[0].sound);
    CHECK(d.tubes[1].id == "wide");
    CHECK_FALSE(d.tubes[1].tamped_width.has_value());
    CHECK(d.tubes[1].roll == Approx(457.2));
}

TEST_CASE("domes are read, ordered by their names") {
    const Design& d = whole();
    REQUIRE(d.domes.size() == 4);
    const Dome& bath = d.domes[1];
    CHECK(bath.id == "bath");
    CHECK(bath.at.x() == Approx(-10 * 12 * in));
    CHECK(bath.at.y() == Approx(6 * 12 * in));
    CHECK(bath.use == Use::shower);
    CHECK(bath.inside_diameter == Approx(72 * in));
    CHECK(bath.fit_springline);
    CHECK_FALSE(bath.fit_diameter);
    CHECK(bath.profile.rise_to_span.value() == 1);
    CHECK_FALSE(bath.profile.rise.has_value());
    CHECK(bath.top.kind == TopKind::skylight);
    CHECK(bath.top.diameter == Approx(24 * in));
    CHECK(bath.top.curb == 3);
    CHECK(bath.top.glazing_load.value() == Approx(729.695).epsilon(1e-5)); // 50 x 14.5939 N/m
    CHECK(bath.fit.clear_height.value() == Approx(80 * in));
    CHECK(bath.fit.clear_square.value() == Approx(30 * in));
    CHECK_FALSE(bath.fit.clear_circle.has_value());
    const Dome& drawn = d.domes[2];
    CHECK(drawn.use == Use::store);
    CHECK(drawn.top.kind == TopKind::closed);
    CHECK(drawn.springline == 0);
    REQUIRE(drawn.profile.points.size() == 3);
    CHECK(drawn.profile.points[0].first == 0);
    CHECK(drawn.profile.points[0].second == Approx(54 * in));
    CHECK(drawn.profile.points[2].first == Approx(108 * in));
    CHECK(drawn.profile.points[2].second == 0);
    const Dome& vault = d.domes[3];
    CHECK(vault.springline == Approx(20 * in));
    CHECK(vault.profile.kind == ProfileKind::pointed);
    CHECK(vault.profile.rise.value() == Approx(108 * in));
    CHECK(vault.tube == "main");
    CHECK(vault.datum == "door");
    CHECK(vault.chain_height.value() == Approx(30 * in));
    CHECK(vault.place.line == 26);
    CHECK(vault.tube_place.line == 33);
    CHECK(vault.tube_place.column == 8);
    CHECK(vault.sound);
    CHECK(vault.lower_tube == "");
    CHECK(vault.second_wythe == 0);
    const Dome& barn = d.domes[0];
    CHECK(barn.lower_tube == "wide");
    CHECK(barn.lower_height == Approx(30 * in));
    CHECK(barn.second_wythe == Approx(15 * in));
}

TEST_CASE("openings are read with the places of their values") {
    const Design& d = whole();
    REQUIRE(d.openings.size() == 8);
    const Opening& door = d.openings[0];
    CHECK(door.id == "door");
    CHECK(door.in == "vault");
    CHECK(door.use == OpeningUse::door);
    CHECK(door.bearing.degrees == 150);
    CHECK(door.width == Approx(32 * in));
    CHECK(door.sill == 0);
    CHECK(door.height == Approx(80 * in));
    CHECK(door.head.kind == HeadKind::pointed);
    CHECK(door.head.rise.value() == Approx(24 * in));
    CHECK(door.frame == Approx(1 * in));
    CHECK(door.frame_depth == Approx(5 * in));
    CHECK(door.reveal_plumb);
    CHECK(door.width_place.line == 58);
    CHECK(door.width_place.column == 9);
    const Opening& eye = d.openings[1];
    CHECK(eye.bearing.degrees == 300); // -60 turned into the circle
    CHECK(eye.use == OpeningUse::vent);
    CHECK(eye.head.kind == HeadKind::circle);
    CHECK(eye.frame == Approx(1.5 * in));
    CHECK(eye.frame_depth == Approx(4.5 * in));
    CHECK_FALSE(eye.reveal_plumb);
    const Opening& fan = d.openings[2];
    CHECK(fan.head.laid == HeadLaid::fan);
    CHECK(fan.head.depth.value() == Approx(14 * in));
    const Opening& flat = d.openings[3];
    CHECK(flat.use == OpeningUse::window);
    CHECK(flat.head.kind == HeadKind::segmental);
    CHECK(flat.head.laid == HeadLaid::corbelled);
    const Opening& gate = d.openings[4];
    CHECK(gate.in == "porch");
    CHECK(gate.bearing.degrees == 330); // the tunnel's
    CHECK(gate.head.kind == HeadKind::square);
    CHECK_FALSE(gate.head.lintel.has_value());
    CHECK(gate.side == TunnelSide::end);
    CHECK_FALSE(gate.niche_depth.has_value());
    const Opening& hatch = d.openings[5];
    REQUIRE(hatch.head.lintel.has_value());
    CHECK(hatch.head.lintel->kind == LintelKind::concrete);
    CHECK(hatch.head.lintel->bearing == Approx(14 * in));
    CHECK(hatch.head.lintel->depth.value() == Approx(6 * in));
    CHECK(hatch.head.lintel->width.value() == Approx(9 * in));
    const Opening& shelf = d.openings[6];
    CHECK(shelf.use == OpeningUse::niche);
    CHECK(shelf.niche_depth.value() == Approx(7 * in));
    const Opening& slit = d.openings[7];
    CHECK(slit.in == "porch");
    CHECK(slit.side == TunnelSide::right);
    CHECK(slit.along == Approx(96 * in));
    CHECK(slit.bearing.degrees == 60); // right of the porch's 330
}

TEST_CASE("a lintel takes its defaults") {
    const DesignReading reading = read_design(replaced(
        whole_design,
        "lintel = { kind = \"concrete\", bearing = \"14 in\", depth = \"6 in\", width = \"9 in\" }",
        "lintel = {}"));
    REQUIRE(codes_of(reading) == "");
    const LintelSpec& lintel = find_opening(reading.design, "hatch")->head.lintel.value();
    CHECK(lintel.kind == LintelKind::timber);
    CHECK(lintel.bearing == Approx(12 * in));
    CHECK_FALSE(lintel.depth.has_value());
    CHECK_FALSE(lintel.width.has_value());
}

TEST_CASE("a bearing in a tunnel may be written if it is the right one") {
    const auto gate = [](const std::string& lines) {
        return read_design(replaced(whole_design, "in = \"porch\"\nuse = \"door\"\n",
                                    "in = \"porch\"\nuse = \"door\"\n" + lines));
    };
    CHECK(codes_of(gate("bearing = 330\n")) == "");
    CHECK(codes_of(gate("bearing = -30.5\n")) == "");
    CHECK(find_opening(gate("bearing = -30.5\n").design, "gate")->bearing.degrees == 330);
    CHECK(codes_of(gate("bearing = 332\n")) == "bearing-off-its-tunnel");
    const DesignReading left = gate("side = \"left\"\nalong = \"8 ft\"\nbearing = 240\n");
    CHECK(codes_of(left) == "");
    CHECK(codes_of(gate("side = \"left\"\nalong = \"8 ft\"\nbearing = 60\n")) ==
          "bearing-off-its-tunnel");
}

TEST_CASE("objects of context are read") {
    const Design& d = whole();
    REQUIRE(d.context.size() == 1);
    const ContextObject& bed = d.context[0];
    CHECK(bed.id == "bed");
    CHECK(bed.file == "furniture/bed.obj");
    CHECK(bed.at.x() == Approx(12 * in));
    CHECK(bed.at.y() == Approx(-24 * in));
    CHECK(bed.base == Approx(4 * in));
    CHECK(bed.bearing.degrees == 45);
    CHECK(bed.metres == Approx(0.015));
    CHECK(bed.y_up);
    CHECK(bed.sound);
}

TEST_CASE("tunnels, buttresses, joins and sleeves are read") {
    const Design& d = whole();
    REQUIRE(d.tunnels.size() == 2);
    const Tunnel& link = d.tunnels[0];
    CHECK(link.to == "drawn");
    CHECK(link.bearing.degrees == Approx(90)); // from centre to centre, due east
    CHECK_FALSE(link.reach.has_value());
    CHECK(link.profile.kind == ProfileKind::catenary);
    CHECK_FALSE(link.end_wall);
    const Tunnel& porch = d.tunnels[1];
    CHECK(porch.from == "vault");
    CHECK(porch.to == "");
    CHECK(porch.bearing.degrees == 330);
    CHECK(porch.width == Approx(36 * in));
    CHECK(porch.springline == Approx(45 * in));
    CHECK(porch.reach.value() == Approx(114 * in));
    CHECK(porch.end_wall);
    CHECK(porch.wall_stays);
    CHECK(porch.tube == "main");
    REQUIRE(d.buttresses.size() == 3);
    CHECK(d.buttresses[0].beside == "door");
    CHECK(d.buttresses[0].gap == Approx(2 * in));
    CHECK(d.buttresses[1].bearings == std::vector<double>{60, 240});
    CHECK(d.buttresses[1].width.value() == Approx(30 * in));
    CHECK(d.buttresses[1].height == Approx(40 * in));
    CHECK(d.buttresses[1].projection == Approx(30 * in));
    CHECK(d.buttresses[1].projection_top.value() == Approx(15 * in));
    CHECK(d.buttresses[2].bearings == std::vector<double>{45, 135, 225, 315});
    REQUIRE(d.joins.size() == 1);
    CHECK(d.joins[0].first == "vault");
    CHECK(d.joins[0].second == "bath");
    CHECK(d.joins[0].keep == "vault");
    CHECK_FALSE(d.joins[0].bonded);
    REQUIRE(d.sleeves.size() == 2);
    CHECK(d.sleeves[1].in == "bath");
    CHECK(d.sleeves[1].bearing.degrees == 300);
    CHECK(d.sleeves[1].height == Approx(10 * in));
    CHECK(d.sleeves[1].diameter == Approx(4 * in));
    CHECK(d.sleeves[0].in == "link");
    CHECK(d.sleeves[0].side == TunnelSide::left);
    CHECK(d.sleeves[0].along == Approx(13 * 12 * in));
    CHECK(d.sleeves[0].bearing.degrees == Approx(0).margin(1e-9)); // left of the link's 90
}

TEST_CASE("finish, ground, loads and materials are read in SI") {
    const Design& d = whole();
    CHECK(d.finish.inside_plaster == Approx(1.5 * in));
    CHECK(d.finish.outside_plaster == Approx(2 * in));
    CHECK(d.finish.floor_build_up == Approx(4 * in));
    CHECK(d.ground.level == Approx(-6 * in));
    CHECK(d.ground.frost_depth.value() == Approx(24 * in));
    CHECK(d.ground.bearing_capacity.value() == Approx(71820).epsilon(1e-4));
    CHECK(d.ground.friction == 0.45);
    CHECK(d.ground.unit_weight.value() == 18000);
    CHECK(d.ground.friction_angle.value() == 30);
    CHECK(d.ground.slope.value() == 0.05);
    CHECK(d.trench.gravel_depth == Approx(6 * in));
    CHECK(d.trench.width.value() == Approx(21 * in));
    CHECK_FALSE(d.trench.drain);
    CHECK(d.trench.outfall.value().degrees == 90);
    CHECK(d.site.wind_pressure.value() == Approx(957.6).epsilon(1e-4));
    CHECK(d.site.seismic_acceleration.value() == Approx(1.96133));
    CHECK(d.site.snow.value() == Approx(1436.4).epsilon(1e-4));
    REQUIRE(d.fills.size() == 2);
    CHECK(d.fills[0].kind == FillKind::gravel);
    CHECK(d.fills[0].courses.value() == std::pair(1, 4));
    const Fill& fill = d.fills[1];
    CHECK(fill.density.value() == Approx(1842.12).epsilon(1e-5)); // 115 x 16.01846
    CHECK(fill.dry_density.value() == Approx(1681.94).epsilon(1e-5));
    CHECK(fill.strength.value() == Approx(1034214).epsilon(1e-5));
    CHECK(fill.cohesion.value() == 10000);
    CHECK(fill.friction_angle.value() == 32);
    CHECK(fill.stabiliser == Stabiliser::cement);
    CHECK(fill.ratio == 0.08);
    CHECK(fill.by == StabiliserBy::volume);
    CHECK(fill.age_per_lift.value() == 1);
    CHECK(d.wire.strands.value() == 1);
    CHECK(d.wire.lap == Approx(20 * in));
    CHECK(d.wire.breaking == Approx(4003.4).epsilon(1e-5)); // 900 x 4.448222
    CHECK(d.wire.joint_factor == 0.4);
    CHECK(d.wire.hoop_tension);
    CHECK(d.joint.friction == 0.6);
    CHECK(d.joint.friction_bare == 0.35);
    CHECK(d.joint.factor == 2);
    CHECK(d.compass.pole_diameter == Approx(2 * in));
    CHECK(d.compass.chain_height.value() == Approx(25 * in));
    CHECK(d.compass.arm == CompassArm::chain);
    CHECK(d.as_laid_tops.at(9) == Approx(25.25 * in));
    CHECK(d.as_laid_tops.at(10) == Approx(30.25 * in));
}

TEST_CASE("every other way to write a dome's shape is read") {
    const auto dome_with = [](const std::string& part, const std::string& with) {
        const DesignReading reading = read_design(replaced(whole_design, part, with));
        CHECK(codes_of(reading) == "");
        return *find_dome(reading.design, "vault");
    };
    const std::string profile = "profile = { kind = \"pointed\", rise = \"9 ft\" }\ntop = { kind = "
                                "\"closed\" }";
    CHECK(dome_with(profile, "profile = { kind = \"round\" }").profile.kind == ProfileKind::round);
    const Dome arc = dome_with(profile, "profile = { kind = \"pointed\", arc_radius = \"9 ft\" }");
    CHECK(arc.profile.arc_radius.value() == Approx(108 * in));
    const Dome parabola = dome_with(profile, "profile.kind = \"parabola\"\nprofile.rise = 9");
    CHECK(parabola.profile.kind == ProfileKind::parabola);
    CHECK(parabola.profile.rise.value() == Approx(108 * in));
    const Dome apex = dome_with(
        profile, "profile = { kind = \"catenary\", rise = \"fit\" }\nfit = { apex = \"12 ft\" }");
    CHECK(apex.profile.fit_rise);
    CHECK(apex.fit.apex.value() == Approx(144 * in));
    const Dome area = dome_with("inside_diameter = \"9 ft\"\nspringline = \"20 in\"",
                                "inside_diameter = \"fit\"\nspringline = \"20 in\"\nfit = { "
                                "floor_area = \"120 sq ft\" }");
    CHECK(area.fit_diameter);
    CHECK(area.fit.floor_area.value() == Approx(11.1483648));
    const Dome outside = dome_with("inside_diameter = \"9 ft\"\nspringline = \"20 in\"",
                                   "inside_diameter = \"fit\"\nspringline = \"20 in\"\nfit = { "
                                   "outside_area = \"20 m2\" }");
    CHECK(outside.fit.outside_area.value() == 20);
}

TEST_CASE("a small design takes the documented defaults") {
    const DesignReading reading = read_design(R"(coilwright = 1
name = "Small"
unit = "m"
[course]
height = 0.12
[tube.main]
lay_flat = "43 cm"
[dome.one]
inside_diameter = 3
springline = 0.6
profile = { kind = "round" }
tube = "main"
)");
    REQUIRE(codes_of(reading) == "");
    const Design& d = reading.design;
    CHECK(d.course.height == 0.12);
    CHECK(d.course.foundation == 3);
    CHECK(d.course.end_allowance == Approx(8 * in));
    CHECK(d.course.longest_tube == Approx(360 * in));
    CHECK(d.course.joint_lap == Approx(18 * in));
    CHECK_FALSE(d.course.least_inside_radius.has_value());
    CHECK(d.course.curve == CutCurve::outer);
    CHECK(d.course.edge == TubeEdge::round);
    CHECK(d.course.tamp_gap == 0);
    CHECK(d.course.strike_age_days == 7);
    CHECK(d.domes[0].at == Vec2(0, 0));
    CHECK(d.domes[0].datum == "");
    CHECK(d.domes[0].inside_diameter == 3);
    CHECK(d.finish.inside_plaster == 0);
    CHECK(d.ground.level == Approx(-6 * in));
    CHECK(d.ground.friction == 0.4);
    CHECK_FALSE(d.wire.strands.has_value());
    CHECK(d.wire.lap == Approx(24 * in));
    CHECK(d.wire.breaking == Approx(950 * 4.448222).epsilon(1e-5));
    CHECK(d.wire.joint_factor == 0.5);
    CHECK_FALSE(d.wire.hoop_tension);
    CHECK(d.joint.friction == 0.5);
    CHECK(d.joint.friction_bare == 0.4);
    CHECK(d.joint.factor == 1.5);
    CHECK(d.trench.drain);
    CHECK(d.compass.arm == CompassArm::level);
    CHECK(d.fills.empty());
    CHECK(d.as_laid_tops.empty());
}

TEST_CASE("the demo designs are read without a fault") {
    for (const char* name : {"grain-store", "washroom", "workshop", "cabin-metric"}) {
        CAPTURE(name);
        const std::string text =
            file_text(std::string(COILWRIGHT_SOURCE_DIR) + "/models/" + name + ".toml");
        REQUIRE_FALSE(text.empty());
        CHECK(codes_of(read_design(text)) == "");
    }
}

TEST_CASE("line ends, a byte order mark and the locale change nothing") {
    std::string windows;
    for (const char c : whole_design)
        windows += c == '\n' ? std::string("\r\n") : std::string(1, c);
    CHECK(codes_of(read_design(windows)) == "");
    CHECK(codes_of(read_design("\xEF\xBB\xBF" + whole_design)) == "");
    if (std::setlocale(LC_ALL, "de_DE.UTF-8")) {
        CHECK(read_design(whole_design).design.ground.slope.value() == 0.05);
        std::setlocale(LC_ALL, "C");
    }
}
