#include "geometry/design/read_tables.hpp"

namespace coilwright {

namespace {

constexpr MeasureKey friction(std::string_view name, double example) {
    return {name, 0.05, 2, example};
}

} // namespace

void read_ground(TableReader& root, Design& design) {
    auto table = root.table("ground", "{ level = \"-6 in\" }");
    if (!table)
        return;
    Ground& ground = design.ground;
    ground.place = table->place();
    ground.level_stated =
        set(ground.level, table->length(usual_length("level", -5, 1.5, 5, -0.1524)));
    set(ground.frost_depth, table->length({"frost_depth", 0, 5, 0.6096}));
    set(ground.bearing_capacity,
        table->measure({"bearing_capacity", 5e3, 5e6, 71820.3884755}, Measure::pressure));
    ground.friction_stated =
        set(ground.friction, table->measure(friction("friction", 0.4), Measure::number));
    set(ground.unit_weight,
        table->measure({"unit_weight", 5e3, 30e3, 18000}, Measure::unit_weight));
    set(ground.friction_angle, table->measure({"friction_angle", 0, 60, 30}, Measure::degrees));
    set(ground.slope, table->measure({"slope", -1, 1, 0.05}, Measure::number));
    table->finish();
}

void read_trench(TableReader& root, Design& design) {
    auto table = root.table("trench", "{ gravel_depth = \"6 in\" }");
    if (!table)
        return;
    Trench& trench = design.trench;
    trench.place = table->place();
    set(trench.gravel_depth, table->length(usual_length("gravel_depth", 0, 1.5, 3, 0.1524)));
    set(trench.width, table->length({"width", 0.1, 5, 0.5334}));
    set(trench.drain, table->truth("drain"));
    if (const auto outfall = table->bearing("outfall"))
        trench.outfall = Bearing{turned_into_circle(*outfall)};
    table->finish();
}

void read_site(TableReader& root, Design& design) {
    auto table = root.table("site", "{ snow = \"20 psf\" }");
    if (!table)
        return;
    Site& site = design.site;
    site.place = table->place();
    set(site.wind_pressure,
        table->measure({"wind_pressure", 0, 20e3, 957.605179660}, Measure::pressure));
    set(site.seismic_acceleration,
        table->measure({"seismic_acceleration", 0, 30, 1.96133}, Measure::acceleration));
    set(site.snow, table->measure({"snow", 0, 50e3, 957.605179660}, Measure::pressure));
    table->finish();
}

void read_joint(TableReader& root, Design& design) {
    auto table = root.table("joint", "{ friction = 0.5 }");
    if (!table)
        return;
    Joint& joint = design.joint;
    joint.place = table->place();
    joint.friction_stated =
        set(joint.friction, table->measure(friction("friction", 0.5), Measure::number));
    set(joint.friction_bare, table->measure(friction("friction_bare", 0.4), Measure::number));
    joint.factor_stated =
        set(joint.factor, table->measure({"factor", 1, 10, 1.5}, Measure::number));
    table->finish();
}

void read_wire(TableReader& root, Design& design) {
    auto table = root.table("wire", "{ strands = 2 }");
    if (!table)
        return;
    Wire& wire = design.wire;
    wire.place = table->place();
    set(wire.strands, table->whole("strands", 1, 8, 2));
    set(wire.lap, table->length({"lap", 0, 3, 0.6096}));
    set(wire.breaking, table->measure({"breaking", 100, 100e3, 4225.81055449}, Measure::force));
    set(wire.joint_factor, table->measure({"joint_factor", 0.01, 1, 0.5}, Measure::number));
    set(wire.hoop_tension, table->truth("hoop_tension"));
    table->finish();
}

} // namespace coilwright
